import type { Outcome } from '#core/review/result';
import { HOUR, HOURS_OF_WEEK } from '#core/time/week';

/** One hour of the week on the cover chart. */
export interface CoverPoint {
  hour: number;
  /** Hours to spare; −Infinity where nobody ever comes; null where a fault that begins then does no harm. */
  spareH: number | null;
}

/** Time to spare by hour of the week, Monday 00:00 first. */
export function coverPoints(outcome: Outcome): CoverPoint[] {
  return Array.from({ length: HOURS_OF_WEEK }, (_, hour) => {
    if ((outcome.harmS[hour] ?? null) === null) return { hour, spareH: null };
    const spare = outcome.spareS[hour] ?? null;
    return { hour, spareH: spare === null ? Number.NEGATIVE_INFINITY : spare / HOUR };
  });
}

/** Time to spare by hour of the week as it stands in seconds: −Infinity where nobody ever comes, null where nothing is harmed. */
export function pointsOf(spareS: readonly (number | null)[]): CoverPoint[] {
  return spareS.map((s, hour) => ({ hour, spareH: s === null ? null : s / HOUR }));
}

/** Runs of hours with nothing to spare, joined across the end of the week: first hour and how many. */
export function bareStretches(points: readonly CoverPoint[]): [number, number][] {
  const bare = points.map(({ spareH }) => spareH !== null && spareH <= 0);
  const count = points.length;
  if (bare.every(Boolean)) return [[0, count]];
  return bare.flatMap((is, hour): [number, number][] => {
    if (!is || bare[(hour + count - 1) % count]) return [];
    let length = 1;
    while (bare[(hour + length) % count]) length++;
    return [[hour, length]];
  });
}
