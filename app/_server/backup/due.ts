import 'server-only';

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** When backups began and ended. */
export interface Runs {
  /** The last that succeeded began at. */
  goodAt: Date | null;
  /** The last that failed ended at. */
  failedAt: Date | null;
}

/**
 * Whether the daily backup is to be made now: none has been made since the hour last came round. One that was missed, since
 * nothing ran at that hour, is caught up; one that failed is tried again an hour later.
 *
 * @param at     the instant
 * @param hour   of the day, in UTC
 */
export function isBackupDue({ goodAt, failedAt }: Runs, at: Date, hour: number): boolean {
  if (failedAt !== null && at.getTime() - failedAt.getTime() < HOUR_MS) return false;
  return goodAt === null || goodAt.getTime() < lastSlot(at, hour);
}

/** The next instant at which a daily backup is made, when all goes well. */
export function nextSlot(at: Date, hour: number): Date {
  return new Date(lastSlot(at, hour) + DAY_MS);
}

/** @returns ms at which the hour last came round */
function lastSlot(at: Date, hour: number): number {
  const shiftedMs = at.getTime() - hour * HOUR_MS;
  return Math.floor(shiftedMs / DAY_MS) * DAY_MS + hour * HOUR_MS;
}
