import type { Quality } from '../readings/reading';
import type { Check } from './check';

/** What was seen, by the kind of its line. Numbers are in the facility file's units, litres for what was used. */
export type EntryValue =
  | { kind: 'number'; value: number; quality: Quality; reason?: string }
  | { kind: 'yes-no'; asUsual: boolean }
  /** `count` is null when all were seen as usual. */
  | { kind: 'head-count'; count: number | null }
  | { kind: 'used'; litres: number }
  /** `test` is its id in the ledger of the safeguard. */
  | { kind: 'test'; result: 'worked' | 'failed'; test: string };

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

/** Beyond which limit of its alarms a number lies; null when within, or there is none. */
export function beyondLimit(check: Check, value: number): 'above' | 'below' | null {
  if (check.kind !== 'number' || !check.alarm) return null;
  const { above, below } = check.alarm;
  if (above !== undefined && value > above) return 'above';
  return below !== undefined && value < below ? 'below' : null;
}

/** Whether what was seen is other than usual: somebody has to look at it again. */
export function isAbnormal(check: Check, value: EntryValue): boolean {
  switch (value.kind) {
    case 'number':
      return value.quality !== 'good' || beyondLimit(check, value.value) !== null;
    case 'yes-no':
      return !value.asUsual;
    case 'head-count':
      return check.kind === 'head-count' && value.count !== null && value.count !== check.expected;
    case 'used':
      return false;
    case 'test':
      return value.result === 'failed';
  }
}

/** What somebody who looks at a round again reads first. */
export interface RoundCounts {
  lines: number;
  blank: number;
  abnormal: number;
  notDone: number;
  corrected: number;
}

/** Counts the lines of a round by how they stand. */
export function countRound(checks: readonly Check[], entries: readonly Entry[]): RoundCounts {
  const standing = standingEntries(entries);
  const own = checks.map((check) => ({ check, entry: standing.get(check.key) }));
  return {
    lines: checks.length,
    blank: own.filter(({ entry }) => !entry).length,
    abnormal: own.filter(({ check, entry }) => entry?.value && isAbnormal(check, entry.value)).length,
    notDone: own.filter(({ entry }) => entry?.value === null).length,
    corrected: entries.filter(({ supersedes }) => supersedes !== null).length,
  };
}
