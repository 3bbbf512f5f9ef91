/** Minutes after its end at which a state that nobody ended or put off calls once more, each to the next step. Common practice, no source. */
const AFTER_MIN = [0, 15, 30] as const;
/** From then on it calls every so many minutes, for as long as it stands. */
const EVERY_MIN = 60;
/** Attempts by one way in one turn: what fails is tried again a minute later. */
export const MOST_TRIES = 5;

/** How often a state that has outstayed its end was to have called before now: 0 from its end on. @param overMin   min since its end */
export function turnOf(overMin: number): number {
  const last = AFTER_MIN.length - 1;
  const since = overMin - (AFTER_MIN[last] ?? 0);
  if (since >= 0) return last + Math.floor(since / EVERY_MIN);
  return AFTER_MIN.filter((min) => overMin >= min).length - 1;
}
