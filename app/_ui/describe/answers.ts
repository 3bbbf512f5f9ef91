import type { FindingChange } from '#core/review/difference/finding-changes';
import type { ReviewDifference } from '#core/review/review-difference';
import type { FormAction } from '../form/answer';

/** What a change would make different. */
export interface Seen {
  basedOn: number;
  groups: { system: string | null; name: string; changes: { path: string; words: string }[] }[];
  clashes: string[];
  testAgain: string[];
  touched: number;
}

/** What becomes known of what a change does to the reviews. */
export type News =
  | { is: 'progress'; name: string; done: number; of: number }
  | { is: 'system'; key: string; name: string; difference: ReviewDifference }
  | { is: 'site'; findings: FindingChange[] }
  | { is: 'not-known'; names: string[]; why: 'late' | 'broken' };

/** What keeping a change did. */
export interface Kept {
  changes: number;
  revision: number;
  thing: { noun: string; system: string | null; key: string } | null;
}

/** The server actions of a form for a thing. */
export interface ChangeActions {
  preview: FormAction<Seen>;
  review: FormAction<AsyncIterable<News>>;
  keep: FormAction<Kept>;
}

/** Which change of which thing a form is for. */
export interface ChangeOf {
  site: string;
  act: 'change' | 'add' | 'replace' | 'move' | 'retire';
  noun: string;
  system: string | null;
  key: string | null;
  units: 'metric' | 'us';
}
