import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { type Course, courseOf, type Turn } from './course';
import { type DayWork, dayWork, type HandState } from './day-work';
import { randomOf } from './random';
import { type Series, sampled, type Stretch, within } from './sampled';
import type { LocalDay } from './span';
import { type Habits, habitsOf } from './unmodelled';

/** What befell one system beyond its usual work. */
export interface Befallen {
  turns: readonly Turn[];
  /** While it lasted no usual work was done, and gateways sent twice as often. */
  during: readonly Stretch[];
  /** Meals that belong to it, ms since 1970. */
  fedMs?: readonly number[];
  states?: readonly HandState[];
}

/** What is told of the past of one system: what its gateways sent, and the states people put it into. */
export interface SystemTold {
  series: Series[];
  states: HandState[];
}

/** The past of one system, and the course it took. */
export interface SystemPast extends SystemTold {
  course: Course;
  habits: Habits;
}

/** A system that nothing befell. */
const NOTHING: Befallen = { turns: [], during: [] };

/**
 * The past of one system.
 *
 * @param days      its days, oldest first
 * @param untilMs   now: nothing is read after it
 * @param outages   when each gateway was silent, by key
 * @returns         null for a system that cannot be reckoned with
 */
export function systemPast(
  facility: Facility,
  system: System,
  { days, untilMs }: { days: readonly LocalDay[]; untilMs: number },
  outages: ReadonlyMap<string, readonly Stretch[]>,
  befallen: Befallen = NOTHING,
): SystemPast | null {
  const { zone, key } = facility.site;
  const random = randomOf(key, system.key, 'work');
  const work = dayWork(zone, system, days, random, (atMs) => within(befallen.during, atMs));
  const turns = [...work.turns, ...befallen.turns].sort((a, b) => a.atMs - b.atMs);
  const course = courseOf(facility, system, days, turns);
  if (!course) return null;
  const fromMs = days[0]?.fromMs ?? 0;
  const fedMs = [...work.fedMs, ...(befallen.fedMs ?? [])].sort((a, b) => a - b);
  const habits = habitsOf(system, randomOf(key, system.key, 'habits'), { fedMs, fromMs, clockS: clockOf(days) });
  const series = sampled(facility, course, habits, { fromMs, toMs: untilMs }, { outages, close: befallen.during });
  return { course, habits, series, states: statesUpTo(work, befallen, untilMs) };
}

function statesUpTo(work: DayWork, befallen: Befallen, untilMs: number): HandState[] {
  return [...work.states, ...(befallen.states ?? [])]
    .filter(({ fromMs }) => fromMs <= untilMs)
    .map((state) => ({ ...state, endedMs: state.endedMs !== null && state.endedMs > untilMs ? null : state.endedMs }))
    .sort((a, b) => a.fromMs - b.fromMs);
}

/** Seconds of the day at the site; days are 23 to 25 hours long, and the difference is of no account here. */
function clockOf(days: readonly LocalDay[]): (atMs: number) => number {
  const first = days[0]?.fromMs ?? 0;
  return (atMs) => {
    const day = days[Math.min(days.length - 1, Math.floor((atMs - first + 3_600_000) / 86_400_000))];
    return (atMs - (day && day.fromMs <= atMs ? day.fromMs : first)) / 1000;
  };
}
