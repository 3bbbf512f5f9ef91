import type { Quality } from '../readings/reading';
import type { WaterQuantity } from './check';

/** What was seen, by the kind of its line. Numbers are in the facility file's units, litres for what was used. */
export type EntryValue =
  | { kind: 'number'; value: number; quality: Quality; reason?: string }
  | { kind: 'figure'; value: number }
  | { kind: 'yes-no'; asUsual: boolean }
  /** `option` is the key of what was chosen. */
  | { kind: 'choice'; option: string }
  | { kind: 'text'; text: string }
  /** Ids of the photos. */
  | { kind: 'photo'; photos: string[] }
  /** `count` is null when all were seen as usual. */
  | { kind: 'head-count'; count: number | null }
  | { kind: 'used'; litres: number }
  | { kind: 'doses'; doses: number }
  /** In the facility file's units; what they imply is worked out whenever it is shown. */
  | { kind: 'water-test'; figures: Partial<Record<WaterQuantity, Measured>> }
  /** `test` is its id in the ledger of the safeguard, `witness` the account of who saw it as well. */
  | { kind: 'test'; result: 'worked' | 'failed'; test: string; witness?: string }
  /** `fit` says whether the instrument may go on. */
  | { kind: 'calibration'; points: CalibrationPoint[]; slope: number | null; fit: boolean };

/** A figure as it was judged when it came. */
export interface Measured {
  value: number;
  quality: Quality;
  reason?: string;
}

/** What an instrument read in something known, before and after it was set; null when it was not set. Facility file's unit. */
export interface CalibrationPoint {
  standard: number;
  before: number;
  after: number | null;
}

/** An entry as it stands on a round. */
export interface Entry {
  id: string;
  check: string;
  atMs: number;
  by: string;
  /** Null when it was not done; `notDone` then says why. */
  value: EntryValue | null;
  notDone: string | null;
  note: string | null;
  /** The entry that it corrects, and why. */
  supersedes: string | null;
  reason: string | null;
}

/** Entries that stand: of what was corrected, the correction, by the key of their line. */
export function standingEntries<E extends Pick<Entry, 'id' | 'check' | 'supersedes'>>(
  entries: readonly E[],
): Map<string, E> {
  const corrected = new Set(entries.flatMap(({ supersedes }) => supersedes ?? []));
  return new Map(entries.filter(({ id }) => !corrected.has(id)).map((entry) => [entry.check, entry]));
}
