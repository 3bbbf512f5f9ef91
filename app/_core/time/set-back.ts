/**
 * ms by which what was noted before lies ahead of the clock once that counts as set back; less is what the clocks of several
 * machines differ by, and what a body of readings waits for. Common practice, no source.
 */
export const SET_BACK_MS = 60_000;

/**
 * Whether the clock of the host was set back since something was noted by it.
 *
 * @param notedMs   what the clock showed then, ms since 1970
 * @param nowMs     what it shows now
 */
export function isSetBack(notedMs: number, nowMs: number): boolean {
  return notedMs - nowMs > SET_BACK_MS;
}
