import type { Column } from '../plans/credit';
import type { Context, View } from './context';
import type { Courses } from './outcome';
import { type Subject, touchesWater, tryAt, upsetOf } from './trial';

/** Hours of the day tried first when they differ at all; every hour is tried once one of them leads to harm. */
const COARSE = [2, 8, 14, 20];

/** Courses from every hour of the day that makes a difference. */
export function coursesOf(context: Context, view: View, subject: Subject, column: Column): Courses {
  const chances = new Map<string, number | null>();
  const all = Array.from({ length: 24 }, (_, h) => h);
  if (!touchesWater(context, upsetOf(context, subject))) return { trials: [], byHour: all.map(() => -1), chances };
  const attempt = (hour: number) => tryAt(context, view, subject, column, hour);
  const first = attempt(COARSE[0] ?? 0);
  const sameAllDay = first.machine.room.steady && first.machine.devices.every((d) => d.regulated.kind !== 'hours');
  if (sameAllDay) return { trials: [first], byHour: all.map(() => 0), chances };
  const coarse = [first, ...COARSE.slice(1).map(attempt)];
  if (coarse.every((trial) => trial.record.harms.length === 0)) {
    return { trials: coarse, byHour: all.map((h) => nearest(h)), chances };
  }
  const trials = all.map((h) => coarse[COARSE.indexOf(h)] ?? attempt(h));
  return { trials, byHour: all, chances };
}

function nearest(hour: number): number {
  const distance = (a: number, b: number) => Math.min(Math.abs(a - b), 24 - Math.abs(a - b));
  return COARSE.reduce(
    (best, candidate, i) => (distance(candidate, hour) < distance(COARSE[best] ?? 0, hour) ? i : best),
    0,
  );
}
