import { addDays } from '../time/add-days';
import { dayOf } from '../time/day-of';
import { type Instant, instantOf, wallClock } from '../time/zone';

/** When a state is begun by the clock. */
export interface TimedState {
  /** Days of the week, as the rota names them. */
  days: readonly string[];
  /** Local time, HH:MM. */
  at: string;
}

/** How long after its time it is still begun, ms: a worker may have been away. */
const LATE_MS = 10 * 60_000;

/**
 * The instant at which a state was to begin by the clock, where that is now or was within ten minutes. A time that the clocks leap
 * over is put off by the leap, of one shown twice the first counts (RFC 5545, 3.3.5).
 *
 * @param zone   IANA zone of the site
 * @returns      ms since 1970; null when none is due
 */
export function timedDue({ days, at }: TimedState, zone: string, now: Instant): Instant | null {
  const today = wallClock(zone, now).date;
  for (const date of [today, addDays(today, -1)]) {
    if (!days.some((day) => day === dayOf(date))) continue;
    const due = instantOf(zone, date, at);
    if (due <= now && now - due < LATE_MS) return due;
  }
  return null;
}
