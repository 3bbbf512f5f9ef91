import { isAbnormal } from './abnormal';
import type { Check } from './check';
import { type Entry, standingEntries } from './entry';

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
