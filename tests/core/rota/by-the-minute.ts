import type { Facility } from '#core/facility/facility';
import { DAYS } from '#core/facility/site';
import type { Shift } from '#core/rota/rota';

/** Minutes of a week. */
const WEEK_MIN = 10_080;

const minuteOf = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
const figure = (of: { value: number | null } | undefined) => of?.value ?? Number.NaN;

/** Whether a shift is on at a minute of the week, by looking at the two days it may have begun on. */
export function isOn({ days, from, to }: Shift, minute: number): boolean {
  const at = ((minute % WEEK_MIN) + WEEK_MIN) % WEEK_MIN;
  const day = Math.floor(at / 1440);
  const [now, begins, ends] = [at % 1440, minuteOf(from), minuteOf(to)];
  const beganOn = (index: number) => days.includes(DAYS[(index + 7) % 7] ?? 'mon');
  if (begins < ends) return beganOn(day) && begins <= now && now < ends;
  return (beganOn(day) && now >= begins) || (beganOn(day - 1) && now < ends);
}

/** For each minute of the week, how long the quickest of those on duty needs, min; Infinity with nobody on duty. */
export function quickest({ site, shifts, people }: Facility): number[] {
  const home = new Map(people.map((one) => [one.key, figure(site.answerOnCallMin) + figure(one.travelMin)]));
  const needed = (shift: Shift) =>
    shift.kind === 'on-site'
      ? figure(site.answerOnSiteMin)
      : Math.min(...shift.people.map((key) => home.get(key) ?? Number.NaN));
  return Array.from({ length: WEEK_MIN }, (_, minute) =>
    Math.min(...shifts.filter((shift) => shift.people.length > 0 && isOn(shift, minute)).map(needed)),
  );
}

/** When somebody stands there at the earliest, min after a call, trying every minute of the following week. */
export function tried(needed: readonly number[], called: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let later = 0; later < WEEK_MIN && later < best; later++) {
    best = Math.min(best, later + (needed[(called + later) % WEEK_MIN] ?? Number.NaN));
  }
  return best;
}
