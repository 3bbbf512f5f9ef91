import type { Facility } from '../facility/facility';
import { addDays } from '../time/add-days';
import { dayNumber } from '../time/days';
import { groupBy } from '../group-by';
import type { Person, Shift } from './rota';

/** 1970-01-01, from which days are counted, was a Thursday: three days after Monday. */
const FIRST_DAY = 3;
const WEEK_DAYS = 7;

/**
 * A site with the shifts alone that every week has from a day on: one that is over or has not begun is no cover of the usual
 * week, nor is one that comes by a rule of its own. Shifts that take turns week by week count once, where together they leave no
 * week out, with the people of that whose quickest person has the longest way.
 * @param on "YYYY-MM-DD"
 */
export function shiftsInForce<F extends Pick<Facility, 'people' | 'shifts'>>(facility: F, on: string): F {
  const begun = facility.shifts.filter((shift) => isInForce(shift, on));
  const each = begun.filter((shift) => weeksOf(shift) === 1);
  const shifts = [...each, ...inTurn(begun, facility.people)];
  return shifts.length === facility.shifts.length ? facility : { ...facility, shifts };
}

/** Shifts in turn have begun once the last of them comes round within one turn of all. */
function isInForce({ starts, ends, everyWeeks = 1, rule }: Shift, on: string): boolean {
  if (rule !== undefined) return false;
  const soon = addDays(on, WEEK_DAYS * (everyWeeks - 1));
  return (starts === undefined || starts <= soon) && (ends === undefined || on <= ends);
}

/** Weeks from one to the next; without a first day the weeks are not counted, so that it comes in each. */
function weeksOf({ everyWeeks = 1, starts }: Shift): number {
  return starts === undefined ? 1 : everyWeeks;
}

/** For each set of shifts alike but for their week, the one that counts; none where some week lacks it. */
function inTurn(shifts: readonly Shift[], people: readonly Person[]): Shift[] {
  const turning = shifts.filter((shift) => weeksOf(shift) > 1);
  const alike = groupBy(turning, (one) =>
    [one.kind, one.from, one.to, weeksOf(one), ...[...one.days].sort()].join(' '),
  );
  return [...alike.values()].flatMap((group) => {
    const weeks = new Set(group.map((one) => week(one.starts ?? '') % weeksOf(one)));
    const [first] = group;
    if (!first || weeks.size < weeksOf(first)) return [];
    return [group.reduce((slowest, one) => (way(one, people) > way(slowest, people) ? one : slowest))];
  });
}

function week(date: string): number {
  return Math.floor((dayNumber(date) + FIRST_DAY) / WEEK_DAYS);
}

/** Minutes that the quickest of a shift needs; endless where nobody's way is known. */
function way({ people: keys }: Shift, people: readonly Person[]): number {
  const known = people.filter(({ key }) => keys.includes(key)).flatMap(({ travelMin }) => travelMin?.value ?? []);
  return Math.min(Number.POSITIVE_INFINITY, ...known);
}
