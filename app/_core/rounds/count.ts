import { isAbnormal } from './abnormal';
import type { Check } from './check';
import type { UsedRate } from './rate';
import { type Entry, standingEntries } from './entry';

/** What somebody who looks at a round again reads first. */
export interface RoundCounts {
  lines: number;
  blank: number;
  abnormal: number;
  notDone: number;
  corrected: number;
}

/**
 * Counts the lines of a round by how they stand.
 *
 * @param rates   what is used a day on lines that note it, by key; what is beyond the usual is told of those alone that are here
 */
export function countRound(
  checks: readonly Check[],
  entries: readonly Entry[],
  rates: ReadonlyMap<string, UsedRate | null> = new Map(),
): RoundCounts {
  const standing = standingEntries(entries);
  const own = checks.map((check) => ({ check, entry: standing.get(check.key) }));
  return {
    lines: checks.length,
    blank: own.filter(({ entry }) => !entry).length,
    abnormal: own.filter(({ check, entry }) => entry?.value && isAbnormal(check, entry.value, rates.get(check.key)))
      .length,
    notDone: own.filter(({ entry }) => entry?.value === null).length,
    corrected: entries.filter(({ supersedes }) => supersedes !== null).length,
  };
}
