import type { Shift } from '../rota/rota';
import { shiftTurns } from '../rota/shift-turns';
import { addDays } from '../time/add-days';
import { dayOf } from '../time/day-of';
import { dayLengthMin, dayStart, type Instant, instantOf } from '../time/zone';
import { covers, lateness } from './coverage';
import type { RoundSlot } from './slot';

/** One walk of the timetable: when it is due, from when it may be begun, is late, and can no longer be made good. */
export interface WalkDue {
  slot: RoundSlot;
  /** Day on which it is due at the site, "YYYY-MM-DD". */
  date: string;
  dueAt: Instant;
  opensAt: Instant;
  lateAt: Instant;
  /** When a later walk that looks at all of this may be begun: until then it can be walked late, from then on it is missed. */
  closesAt: Instant;
}

/** How a walk stands. */
export type Standing = 'ahead' | 'due' | 'begun' | 'late' | 'missed' | 'done';

const HOUR_MS = 3_600_000;
/** How long before it is due a round may be begun. Common practice, no source. */
const EARLY_MS = HOUR_MS;
/** A check of each shift is late after two hours. Common practice, no source. */
const SHIFT_LATE_MS = 2 * HOUR_MS;
/** Days on which the next walk that covers one is sought; a weekly one comes round within them. */
const AHEAD_DAYS = 9;

/**
 * The walks of a timetable that are due within some days, each on the clocks of the site: one at a time that the clocks leap
 * over is put off by the leap, one at a time they show twice is due once, at first.
 *
 * Late: a check of each shift two hours after it was due; one made once a day at the end of the shift it falls in, or of the
 * day where it falls in none; one made on three days of the week or fewer a day later. Missed: once a later walk that looks
 * at all of it may be begun, or half-way to it where the two lie close together. The three figures are common practice, no source.
 *
 * @param zone IANA zone of the site
 * @param from first day, "YYYY-MM-DD"
 * @param to the day after the last one
 * @param shifts the rota, for the end of the shift
 * @returns walks in order of when they are due
 * @throws RangeError when there is no such zone or day
 */
export function walksDue(
  slots: readonly RoundSlot[],
  zone: string,
  from: string,
  to: string,
  shifts: readonly Shift[] = [],
): WalkDue[] {
  const turns = shiftTurns(
    shifts.filter(({ kind }) => kind === 'on-site'),
    zone,
    addDays(from, -1),
    to,
  );
  const all = timesOf(slots, zone, from, addDays(to, AHEAD_DAYS));
  return all
    .filter(({ date }) => date < to)
    .map((walk) => {
      const next = all.find((later) => later.dueAt > walk.dueAt && covers(later.slot, walk.slot));
      const closesAt = next
        ? Math.max(next.dueAt - EARLY_MS, (walk.dueAt + next.dueAt) / 2)
        : dayStart(zone, addDays(walk.date, 8));
      const lateAt = Math.min(closesAt, lateFrom(walk, slots, zone, turns));
      return { ...walk, opensAt: walk.dueAt - EARLY_MS, lateAt, closesAt };
    });
}

/**
 * How a walk stands at a moment. One that was begun is never missed: it is late until it is signed.
 * @param begunAt when it was begun; null when nobody has
 * @param signedAt when it was signed; null when nobody has
 */
export function standing(
  walk: Pick<WalkDue, 'opensAt' | 'lateAt' | 'closesAt'>,
  begunAt: Instant | null,
  signedAt: Instant | null,
  now: Instant,
): Standing {
  if (signedAt !== null) return 'done';
  if (begunAt !== null) return now < walk.lateAt ? 'begun' : 'late';
  if (now < walk.opensAt) return 'ahead';
  if (now < walk.lateAt) return 'due';
  return now < walk.closesAt ? 'late' : 'missed';
}

type Timed = Pick<WalkDue, 'slot' | 'date' | 'dueAt'>;

function timesOf(slots: readonly RoundSlot[], zone: string, from: string, to: string): Timed[] {
  const all: Timed[] = [];
  for (let date = from; date < to; date = addDays(date, 1)) {
    // A day that the place left out of its calendar has no rounds; put off, they would come twice on the next.
    if (dayLengthMin(zone, date) === 0) continue;
    const day = dayOf(date);
    for (const slot of slots)
      if (slot.days.includes(day)) all.push({ slot, date, dueAt: instantOf(zone, date, slot.at) });
  }
  return all.sort((a, b) => a.dueAt - b.dueAt);
}

function lateFrom(
  { slot, date, dueAt }: Timed,
  slots: readonly RoundSlot[],
  zone: string,
  turns: readonly { start: Instant; end: Instant }[],
): Instant {
  const day = dayOf(date);
  switch (lateness(slot, day, slots)) {
    case 'shift':
      return dueAt + SHIFT_LATE_MS;
    case 'day': {
      const ends = turns.filter(({ start, end }) => start <= dueAt && dueAt < end).map(({ end }) => end);
      return ends.length > 0 ? Math.max(...ends) : dayStart(zone, addDays(date, 1));
    }
    case 'week':
      return instantOf(zone, addDays(date, 1), slot.at);
  }
}
