import { wallClock } from '../../time/zone';
import { dayNumber } from '../../time/days';
import { groupBy } from '../../group-by';
import { percentile } from '../answers';
import type { Raise } from './raise';

/** How soon alarms were acknowledged. Minutes. */
export interface Acknowledged {
  cases: number;
  medianMin: number;
  highMin: number;
}

/** How soon, in one hour of the week. */
export interface HourOfWeek extends Acknowledged {
  /** 0 is Monday. */
  day: number;
  hour: number;
}

/** What became of alarms as far as people go. */
export interface Answering {
  all: Acknowledged | null;
  /** Hours of the week at the site in which alarms were raised that somebody acknowledged, in order. */
  hours: HourOfWeek[];
  /** Never acknowledged so far, and back to normal before anybody did. */
  never: number;
  returnedBefore: number;
}

/** 1970-01-01 was a Thursday: three days after Monday. */
const FIRST_DAY = 3;

/** How soon alarms were acknowledged, and by hour of the week in which they were raised. @param zone IANA zone of the site */
export function answering(raises: readonly Raise[], zone: string): Answering {
  const timed = raises.flatMap(({ raisedMs, acknowledgedMs }) =>
    acknowledgedMs === null ? [] : [{ raisedMs, min: (acknowledgedMs - raisedMs) / 60_000 }],
  );
  const hours = [...groupBy(timed, ({ raisedMs }) => hourOfWeek(raisedMs, zone))].flatMap(([at, own]) => {
    const found = acknowledged(own.map(({ min }) => min));
    return found ? [{ day: Math.floor(at / 24), hour: at % 24, ...found }] : [];
  });
  return {
    all: acknowledged(timed.map(({ min }) => min)),
    hours: hours.sort((a, b) => a.day - b.day || a.hour - b.hour),
    never: raises.filter(({ acknowledgedMs }) => acknowledgedMs === null).length,
    returnedBefore: raises.filter(
      ({ returnedMs, acknowledgedMs }) =>
        returnedMs !== null && (acknowledgedMs === null || returnedMs < acknowledgedMs),
    ).length,
  };
}

function acknowledged(minutes: readonly number[]): Acknowledged | null {
  const [median, high] = [percentile(minutes, 0.5), percentile(minutes, 0.9)];
  return median === null || high === null ? null : { cases: minutes.length, medianMin: median, highMin: high };
}

/** Hour of the week on the wall clock of a place, 0 to 167 from Monday 00:00. */
export function hourOfWeek(atMs: number, zone: string): number {
  const { date, time } = wallClock(zone, atMs);
  return ((((dayNumber(date) + FIRST_DAY) % 7) + 7) % 7) * 24 + Number(time.slice(0, 2));
}
