import { DAYS } from '../../facility/site';
import type { Facility } from '../../facility/facility';
import type { DatedLine } from '../../rota/dated-line';
import { addDays } from '../../time/add-days';
import { instantOf } from '../../time/zone';
import { type Look, roundsOf, walked } from './looks';

/** Days on which a round can still meet a fault that begins in a week: its own, and those for which the fault is followed. */
const DAYS_ASKED = 14;

/**
 * The rounds of a dated week that pass a system, and of the week after it; in order. At a time that the clocks leap over the round
 * is put off by the leap, and of a time that they show twice the first is meant, as of any duty.
 */
export function datedLooks(
  { rounds, site: { zone } }: Pick<Facility, 'rounds' | 'site'>,
  system: string,
  { monday, from, stretches }: DatedLine,
): Look[] {
  const days = Array.from({ length: DAYS_ASKED }, (_, day) => day);
  const all = roundsOf({ rounds }, system).flatMap(({ key, days: on, at, sees }) =>
    days
      .filter((day) => on.some((one) => one === DAYS[day % 7]))
      .map((day) => {
        const atS = (instantOf(zone, addDays(monday, day), at) - from) / 1000;
        return { key, atS, sees: new Set(sees) };
      }),
  );
  return walked(all, stretches);
}
