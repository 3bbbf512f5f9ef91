import { oxygenPercentLaw } from '../../water/oxygen-units';
import { practicalSalinityLaw } from '../../water/practical-salinity';
import { unionisedShareFreeLaw, unionisedShareNbsLaw, unionisedShareTotalLaw } from '../../water/unionised-ammonia';
import type { Law } from '../../water/law';
import type { DerivedGiven, DerivedKind, InputRole } from './series';

/** What each input of a law reads, in the facility file's unit of its quantity. */
export type InputValues = Partial<Record<InputRole, number>>;

/** W up to which a piece of equipment counts as drawing nothing. Common practice, no source. */
const IDLE_W = 2;

const SHARES = { nbs: unionisedShareNbsLaw, total: unionisedShareTotalLaw, free: unionisedShareFreeLaw };

/**
 * The value of a derived series at an instant, by the law of its kind. Of a top-off, which is a sum over a day, see `top-off.ts`.
 *
 * @param values   what its inputs read then
 * @param given    what is described
 * @returns        in the unit of the series; null where an input is missing, or lies where the law does not hold
 */
export function derive(kind: Exclude<DerivedKind, 'top-off'>, values: InputValues, given: DerivedGiven): number | null {
  const { lead, temperature, ph, other } = values;
  const salinity = values.salinity ?? given.salinity;
  if (lead === undefined) return null;
  switch (kind) {
    case 'oxygen-saturation':
      return byLaw(oxygenPercentLaw, lead, temperature, salinity, given.pressureAtm);
    case 'unionised-ammonia': {
      const share = byLaw(SHARES[given.phScale ?? 'nbs'], ph, temperature, salinity);
      return share === null || lead < 0 ? null : share * lead;
    }
    case 'salinity':
      return byLaw(practicalSalinityLaw, lead, given.compensatedToC ?? temperature);
    case 'difference':
      return other === undefined ? null : lead - other;
    case 'watts-beyond':
      return beyond(lead, given);
  }
}

function byLaw<A extends number[]>(law: Law<A>, ...values: { [K in keyof A]: number | undefined }): number | null {
  const all = values.filter((value) => value !== undefined);
  if (all.length < values.length) return null;
  const whole = all as unknown as A;
  return law.inRange(...whole) ? law.compute(...whole) : null;
}

/** W above the range, or below it as a figure below 0; nothing while it lies in the range or draws nothing. */
function beyond(watts: number, { minW = 0, maxW = Infinity }: DerivedGiven): number {
  if (watts > maxW) return watts - maxW;
  return watts > IDLE_W && watts < minW ? watts - minW : 0;
}
