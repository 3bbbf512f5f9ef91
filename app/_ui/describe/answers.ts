import type { FindingChange } from '#core/review/difference/finding-changes';
import type { FieldFault } from '#core/forms/field';
import type { ReviewDifference } from '#core/review/review-difference';

/** What a form gets back: a value, or a refusal with its sentence. */
export type FormAnswer<T> =
  | { ok: true; value: T }
  | { ok: false; said: string; reason: { why: string; faults?: FieldFault[] } };

/** A server action of a form; what it answered before makes no difference to it. */
export type FormAction<T> = (before: null, form: FormData) => Promise<FormAnswer<T>>;

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
