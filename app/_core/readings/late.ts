const HOUR_MS = 3_600_000;

/**
 * How long a reading of a device may be on its way, ms: gateways send what they held back within minutes, and what comes later
 * than this no longer tells how things stand. Common practice, no source.
 */
export const LATE_MS: number = HOUR_MS;

/**
 * Whether a reading that came by itself came late: held up on its way, or taken by a clock that is behind. It is as true as any
 * other of when it was taken, and says nothing of the present.
 *
 * @param atMs     when it was taken, ms since 1970
 * @param cameMs   when it came
 */
export function isLate(atMs: number, cameMs: number): boolean {
  return cameMs - atMs > LATE_MS;
}
