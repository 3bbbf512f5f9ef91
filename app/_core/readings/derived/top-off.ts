import type { DerivedGiven } from './series';

const HOUR_MS = 3_600_000;
const HOURS = 24;
/** Hours of a day that must be known. Common practice, no source. */
const LEAST_HOURS = 20;

/** W above which the pump of a top-off runs, and s for which a reading of its watts holds. Common practice, no source. */
export const RUNS_ABOVE_W = 2;
export const RUNS_HOLD_S = 300;

/** Hours that are read for the 24 before an instant: one more, from whose level the first falls. */
export const TOP_OFF_MS: number = (HOURS + 1) * HOUR_MS;

/** What a sensor read in an hour. */
export interface TopOffHour {
  fromMs: number;
  mean: number;
  /** s for which it drew more than nothing. */
  aboveS: number;
}

/**
 * Litres that a top-off moved in 24 hours: by how far the level of its reservoir fell from hour to hour, rises left out, since
 * somebody filled it; or by how long its pump drew watts, at the rate it is described with. A level in mm over an area in m² is
 * in litres.
 *
 * @param hours   those of the 25 hours before the instant of which something is known, in order
 * @param atMs    the instant, a whole hour, ms since 1970
 * @returns       L; null where less than 20 hours are known
 */
export function topOffLitres(hours: readonly TopOffHour[], atMs: number, given: DerivedGiven): number | null {
  const within = hours.filter(({ fromMs }) => fromMs >= atMs - HOURS * HOUR_MS);
  if (within.length < LEAST_HOURS) return null;
  if (given.surfaceM2 !== undefined) {
    const falls = hours.slice(1).map(({ mean }, i) => Math.max(0, (hours[i]?.mean ?? mean) - mean));
    return given.surfaceM2 * falls.reduce((sum, fall) => sum + fall, 0);
  }
  if (given.flowLPerH === undefined) return null;
  return (given.flowLPerH * within.reduce((sum, { aboveS }) => sum + aboveS, 0)) / 3600;
}
