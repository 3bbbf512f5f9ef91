import type { Column } from '../plans/credit';
import type { Context, View } from './context';
import { CLASSES, type Courses } from './outcome';
import type { HarmClass } from './result';
import { type Subject, type Trial, touchesWater, tryAt, upsetOf } from './trial';

const DAY = 86_400;
const ALL = Array.from({ length: 24 }, (_, h) => h);

/** Hours of the day at which a course may begin. Two tell whether anything comes of it at all: the coldest and the warmest. */
const FIRST = [2, 14];
/** Hours tried when every harm takes longer than a day: by then the hour of the onset has lost most of its say. */
const SLOW = [2, 8, 14, 20];
/** Part by which harms of the first two courses may differ in time and still stand for the hours between. */
const ALIKE = 0.05;

/**
 * Courses from every hour of the day that makes a difference: one where nothing follows the time of day; two where no harm
 * comes, or every harm comes after nearly the same time; four where what differs takes more than a day; else all twenty-four.
 * @param quick only the first two, for a question about the plausible range
 */
export function coursesOf(context: Context, view: View, subject: Subject, column: Column, quick = false): Courses {
  const chances = new Map<string, number | null>();
  if (!touchesWater(context, upsetOf(context, subject))) return { trials: [], byHour: ALL.map(() => -1), chances };
  const tried = new Map<number, Trial>();
  const attempt = (hour: number): Trial => {
    const known = tried.get(hour) ?? tryAt(context, view, subject, column, hour);
    tried.set(hour, known);
    return known;
  };
  const from = (hours: readonly number[]): Courses => ({
    trials: hours.map(attempt),
    byHour: ALL.map((h) => nearest(hours, h)),
    chances,
  });
  const { machine } = attempt(FIRST[0] ?? 0);
  if (machine.room.steady && machine.devices.every((d) => d.regulated.kind !== 'hours')) return from(FIRST.slice(0, 1));
  const first = from(FIRST);
  const differing = CLASSES.map((cls) => first.trials.map((trial) => soonest(trial, cls))).filter(
    (times) => !alike(times),
  );
  if (quick || differing.length === 0) return first;
  return from(Math.min(...differing.flat()) > DAY ? SLOW : ALL);
}

function soonest(trial: Trial, cls: HarmClass): number {
  return Math.min(...trial.record.harms.filter((h) => h.class === cls).map((h) => h.atS));
}

/** Equal (or both never), or apart by less than a twentieth. */
function alike(times: number[]): boolean {
  const least = Math.min(...times);
  const most = Math.max(...times);
  return least === most || most - least <= ALIKE * most;
}

/** Index of the hour that stands for another. */
function nearest(hours: readonly number[], hour: number): number {
  const distance = (h: number) => Math.min(Math.abs(h - hour), 24 - Math.abs(h - hour));
  return hours.reduce((best, candidate, i) => (distance(candidate) < distance(hours[best] ?? 0) ? i : best), 0);
}
