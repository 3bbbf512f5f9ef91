import { addDays } from '../time/add-days';
import { dayStart, type Instant, instantsOf, wallClock } from '../time/zone';
import type { Stretch } from './answering';
import { answerOf, type AnswerTimes, answeringParts } from './cover';
import { homesOf, type Line, type LineHour } from './line';
import { nightsFrom } from './night';
import type { Turn } from './turns';

/** A week that has a date: from its first moment, which is where its line begins. */
export interface DatedLine extends Line {
  /** Its Monday, "YYYY-MM-DD". */
  monday: string;
  /** Its first moment, and the moment after its last: 167 or 169 hours apart where the clocks change by one. */
  from: Instant;
  to: Instant;
}

/** Days after a week that faults of its last hour ask for: they are followed for one week, and a call waits another. */
const DAYS_AFTER = 14;

/** The stretch of real time whose turns a dated week asks for. @param monday its first day, "YYYY-MM-DD" */
export function askedBy(zone: string, monday: string): { from: Instant; to: Instant } {
  return { from: dayStart(zone, monday), to: dayStart(zone, addDays(monday, 7 + DAYS_AFTER)) };
}

/**
 * A dated week as a line of true seconds from its first moment, with the duties that were really agreed.
 *
 * @param monday   its first day at the site, "YYYY-MM-DD"
 * @param turns    those that touch what `askedBy` says
 * @throws RangeError when there is no such zone or day
 */
export function datedLine(zone: string, monday: string, turns: readonly Turn[], times: AnswerTimes): DatedLine {
  const from = dayStart(zone, monday);
  const to = dayStart(zone, addDays(monday, 7));
  const { leaveS, wayS } = times;
  const nights = times.night ? nightsFrom(zone, monday, 7 + DAYS_AFTER, from) : [];
  const after = (at: Instant) => (at - from) / 1000;
  const stretches = turns.flatMap(({ person, kind, start, end, apartS = null }): Stretch[] => {
    const way = wayS.get(person);
    if (way === undefined) return [];
    return answeringParts(after(start), after(end), nights, times).map(({ answer, ...span }) => ({
      ...{ ...span, person },
      ...answerOf(kind, answer, way, apartS),
    }));
  });
  const fromHome = new Map([...wayS].map(([person, way]) => [person, leaveS + way]));
  const hours = hoursOf(zone, monday).map(({ at, hourOfDay }): LineHour => ({ atS: after(at), hourOfDay }));
  return { monday, from, to, hours, stretches, homes: homesOf(fromHome, leaveS) };
}

/** Every hour that the clock on the wall begins in a week: one that it leaps over is not there, one it shows twice is there twice. */
function hoursOf(zone: string, monday: string): { at: Instant; hourOfDay: number }[] {
  const all = Array.from({ length: 7 }, (_, day) => addDays(monday, day)).flatMap((date) =>
    Array.from({ length: 24 }, (_, hourOfDay) =>
      instantsOf(zone, date, `${String(hourOfDay).padStart(2, '0')}:00`).map((at) => ({ at, hourOfDay, date })),
    ).flat(),
  );
  const isShown = ({ at, hourOfDay, date }: (typeof all)[number]) => {
    const shown = wallClock(zone, at);
    return shown.date === date && Number(shown.time.slice(0, 2)) === hourOfDay;
  };
  return all.filter(isShown).sort((a, b) => a.at - b.at);
}
