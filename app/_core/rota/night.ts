import { addDays } from '../time/add-days';
import { DAY, HOUR } from '../time/week';
import { type Instant, instantOf, wallClock } from '../time/zone';

/** When people are asleep: answers by night are measured and stated apart. Common practice, no source. */
const FROM_H = 22;
const TO_H = 7;
const clock = (hour: number) => `${String(hour).padStart(2, '0')}:00`;

/** A night on a line of time, s from its beginning, the end not counted. */
export type Night = readonly [fromS: number, toS: number];

/** The nights of a week on the wall, with those that reach into it and that duties of its last day reach into. */
export const NIGHTS_OF_WEEK: readonly Night[] = Array.from({ length: 10 }, (_, day) => {
  const midnight = day * DAY;
  return [midnight - (24 - FROM_H) * HOUR, midnight + TO_H * HOUR] as const;
});

/** The nights that touch some days at a place. @param first "YYYY-MM-DD" @param at moment from which s are counted */
export function nightsFrom(zone: string, first: string, days: number, at: Instant): Night[] {
  const after = (date: string, hour: number) => (instantOf(zone, date, clock(hour)) - at) / 1000;
  return Array.from({ length: days + 2 }, (_, day) => addDays(first, day - 1)).map(
    (date): Night => [after(date, FROM_H), after(addDays(date, 1), TO_H)],
  );
}

/** Whether it is night at a place. @throws RangeError when there is no such zone */
export function isNight(zone: string, at: Instant): boolean {
  const { time } = wallClock(zone, at);
  return time >= clock(FROM_H) || time < clock(TO_H);
}

/** A stretch of time cut where nights begin and end. */
export function cutByNight(
  fromS: number,
  toS: number,
  nights: readonly Night[],
): { fromS: number; toS: number; isNight: boolean }[] {
  const inside = nights.flatMap((night) => night.filter((s) => s > fromS && s < toS));
  const edges = [...new Set([fromS, ...inside, toS])].sort((a, b) => a - b);
  return edges.slice(1).map((to, i) => {
    const from = edges[i] ?? fromS;
    return { fromS: from, toS: to, isNight: nights.some(([begins, ends]) => begins <= from && from < ends) };
  });
}
