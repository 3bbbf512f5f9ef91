import type { Entry } from './entry';
import type { SheetPlace } from './sheet';

/** s that going on to the next place and looking round it takes at the least. Common practice, no source. */
const LEAST_A_PLACE_S = 15;
/** Places below which the time between them says nothing. Common practice, no source. */
const FEW = 3;

/** A round that was quicker than anybody walks. */
export interface TooQuick {
  /** Places that were entered. */
  places: number;
  /** s from the first entry of the first of them to that of the last. */
  tookS: number;
  /** s that the way takes at the least. */
  leastS: number;
}

/**
 * Whether a round was entered faster than it can be walked, going by the first entry of each place; corrections do not count,
 * nor do the lines of several people apart: whoever shares a round halves its way.
 * @param entries of the round, those that were made out of reach by their own time
 * @returns null where it was not, or where too few places tell
 */
export function tooQuick(
  places: readonly Pick<SheetPlace, 'checks'>[],
  entries: readonly Pick<Entry, 'check' | 'atMs' | 'by' | 'supersedes'>[],
): TooQuick | null {
  const own = entries.filter(({ supersedes }) => supersedes === null);
  const people = new Set(own.map(({ by }) => by));
  const found = [...people].flatMap((by) => {
    const firsts = places.flatMap(({ checks }) => {
      const keys = new Set(checks.map(({ key }) => key));
      const times = own.filter((one) => one.by === by && keys.has(one.check)).map(({ atMs }) => atMs);
      return times.length > 0 ? [Math.min(...times)] : [];
    });
    const tookS = (Math.max(...firsts) - Math.min(...firsts)) / 1000;
    const leastS = (firsts.length - 1) * LEAST_A_PLACE_S;
    return firsts.length >= FEW && tookS < leastS ? [{ places: firsts.length, tookS, leastS }] : [];
  });
  return found.sort((a, b) => b.leastS - b.tookS - (a.leastS - a.tookS))[0] ?? null;
}
