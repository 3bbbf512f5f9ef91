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
 */
export function coursesOf(context: Context, view: View, subject: Subject, column: Column): Courses {
  const upset = upsetOf(context, subject);
  if (!touchesWater(context, upset)) return { trials: [], byHour: ALL.map(() => -1), chances: new Map() };
  const id = courseId(context, view, subject.state, column, upset);
  const known = context.cache?.courses.get(id);
  if (known) return known;
  const made = tryHours(context, view, subject, column);
  context.cache?.courses.set(id, kept(made));
  return made;
}

/** What tells one set of courses of a system from another, as text. */
function courseId(context: Context, view: View, state: StateName, column: Column, upset: Upset): string {
  const { side, only } = view.resolved;
  return [side, only ?? '', state, context.creditText.claimed, context.creditText[column], upsetText(upset)].join('|');
}

/** One course, and the hours of the day it stands for. */
export interface Course {
  trial: Trial;
  hours: number[];
}

/**
 * The first courses of a question about the plausible range, each run only when it is asked for: from the coldest hour, and
 * from the warmest where anything follows the time of day.
 * @param asked when harm comes; or only whether any comes at all, which ends at the first and tells nothing of alarms
 */
export function* firstCourses(
  context: Context,
  view: View,
  subject: Subject,
  asked: 'when' | 'whether',
): Generator<Course> {
  const upset = upsetOf(context, subject);
  if (!touchesWater(context, upset)) return;
  const id = courseId(context, view, subject.state, 'claimed', upset);
  for (const hour of FIRST) {
    const name = `${asked} ${hour} ${id}`;
    const known = context.cache?.courses.get(name);
    const trial = known?.trials[0] ?? tryAt(context, view, subject, 'claimed', hour, asked === 'whether');
    if (!known)
      context.cache?.courses.set(name, kept({ trials: [trial], byHour: ALL.map(() => 0), chances: new Map() }));
    const isOnly = isSteady(trial);
    yield { trial, hours: ALL.filter((h) => isOnly || FIRST[nearest(FIRST, h)] === hour) };
    if (isOnly) return;
  }
}

/** Whether nothing follows the time of day. */
function isSteady({ machine }: Trial): boolean {
  return machine.room.steady && machine.devices.every((d) => d.regulated.kind !== 'hours');
}

function tryHours(context: Context, view: View, subject: Subject, column: Column): Courses {
  const chances = new Map<string, number | null>();
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
  if (isSteady(attempt(FIRST[0] ?? 0))) return from(FIRST.slice(0, 1));
  const [a, b] = FIRST.map(attempt);
  return !a || !b || alike(a, b) ? from(FIRST) : from(turns(attempt));
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
