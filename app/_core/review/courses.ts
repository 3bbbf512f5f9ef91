import type { Column } from '../plans/credit';
import type { Context, View } from './context';
import { CLASSES, type Courses } from './outcome';
import { DAY, HOUR } from '../time/week';
import type { StateName } from '../facility/system';
import type { Upset } from '../faults/upset';
import type { HarmClass } from './result';
import { kept, upsetText } from './review-cache';
import { type Subject, type Trial, touchesWater, tryAt, upsetOf } from './trial';

const ALL = Array.from({ length: 24 }, (_, h) => h);

/** Hours of the day at which a course may begin. Two tell whether anything comes of it at all: the coldest and the warmest. */
const FIRST = [2, 14];
/** Hours tried next when those two differ. */
const NEXT = [2, 8, 14, 20];
/** Part by which harms of two courses may differ in time and still stand for the hours between. */
const ALIKE = 0.05;

/**
 * Courses from every hour of the day that makes a difference: one where nothing follows the time of day; two where no harm
 * comes, or every harm comes after nearly the same time; else as many as it takes until neighbours are alike. Where a harm
 * comes a night sooner or later than from the hour before, the hour at which that turns is found.
 * @param quick only the first two, for a question about the plausible range; `unwatched`: nor what is raised and shown
 */
export function coursesOf(
  context: Context,
  view: View,
  subject: Subject,
  column: Column,
  quick: boolean | 'unwatched' = false,
): Courses {
  const upset = upsetOf(context, subject);
  if (!touchesWater(context, upset)) return { trials: [], byHour: ALL.map(() => -1), chances: new Map() };
  const id = courseId(context, view, subject.state, column, upset);
  const known = context.cache?.courses.get(`${quick} ${id}`);
  if (known) return known;
  const made = tryHours(context, view, subject, column, quick);
  context.cache?.courses.set(`${quick} ${id}`, kept(made));
  return made;
}

/** What tells one set of courses of a system from another, as text. */
function courseId(context: Context, view: View, state: StateName, column: Column, upset: Upset): string {
  const { side, only } = view.resolved;
  return [side, only ?? '', state, context.creditText.claimed, context.creditText[column], upsetText(upset)].join('|');
}

function tryHours(
  context: Context,
  view: View,
  subject: Subject,
  column: Column,
  quick: boolean | 'unwatched',
): Courses {
  const chances = new Map<string, number | null>();
  const tried = new Map<number, Trial>();
  const attempt = (hour: number): Trial => {
    const known = tried.get(hour) ?? tryAt(context, view, subject, column, hour, quick === 'unwatched');
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
  const [a, b] = FIRST.map(attempt);
  return quick || !a || !b || alike(a, b) ? from(FIRST) : from(turns(attempt));
}

/** Hours of the day so close that each is like the next, or is the next hour. */
function turns(attempt: (hour: number) => Trial): number[] {
  const between = (a: number, b: number): number[] => {
    const gap = (b - a + 24) % 24;
    if (gap <= 1 || alike(attempt(a), attempt(b), gap * HOUR)) return [a];
    const middle = (a + Math.floor(gap / 2)) % 24;
    return [...between(a, middle), ...between(middle, b)];
  };
  return NEXT.flatMap((a, i) => between(a, NEXT[(i + 1) % NEXT.length] ?? a));
}

function soonest(trial: Trial, cls: HarmClass): number {
  return Math.min(...trial.record.harms.filter((h) => h.class === cls).map((h) => h.atS));
}

/**
 * Whether each class of harm comes after equal times, or never, or times apart by less than a twentieth; beyond a day, also
 * by no more than the onsets themselves: what waits for an hour of the day comes that much sooner when it begins later.
 * @param apartS s between the onsets
 */
function alike(a: Trial, b: Trial, apartS = 0): boolean {
  return CLASSES.every((cls) => {
    const times = [soonest(a, cls), soonest(b, cls)];
    const [least, most] = [Math.min(...times), Math.max(...times)];
    return least === most || most - least <= Math.max(ALIKE * most, least > DAY ? apartS : 0);
  });
}

/** Index of the hour that stands for another. */
function nearest(hours: readonly number[], hour: number): number {
  const distance = (h: number) => Math.min(Math.abs(h - hour), 24 - Math.abs(h - hour));
  return hours.reduce((best, candidate, i) => (distance(candidate) < distance(hours[best] ?? 0) ? i : best), 0);
}
