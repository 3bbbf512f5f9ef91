import type { ResolvedSystem } from '../../../equipment/resolved';
import type { Equipment } from '../../../facility/system';
import type { Thermostat } from '../../../plans/plan';
import type { Nominal } from '../../../simulate/nominal';
import { DAY, HOUR } from '../../../time/week';
import type { RuleContext } from '../rule';
import { thermostatOf } from './equipment';
import { heatPerKelvin, joinedWith, volumeOf } from './water';

/** The last normal day of a system; null where it cannot be run, which the review says by itself. */
export function normalDay(context: RuleContext, numbers: ResolvedSystem): Nominal | null {
  if (numbers.missing.length > 0) return null;
  try {
    return context.view('nominal').nominal;
  } catch {
    // Lines that undo each other, or figures that lead out of the range of numbers.
    return null;
  }
}

/**
 * Starts of a device in the busiest hour of the last normal day. Where the load varies that is more than a day's
 * starts divided by 24, which a long rest would hide.
 * @param device its place among the system's equipment
 */
export function startsInBusiestHour({ record, startsPerDay }: Nominal, device: number): number {
  const from = Math.max(0, record.endS - DAY);
  const starts = record.switches.filter((one) => one.device === device && one.on && one.t > from).map(({ t }) => t);
  let most = Math.ceil((startsPerDay[device] ?? 0) / 24);
  let first = 0;
  for (const [last, t] of starts.entries()) {
    while (t - (starts[first] ?? t) >= HOUR) first++;
    most = Math.max(most, last - first + 1);
  }
  return most;
}

/**
 * Starts in an hour at the load that takes half of the power, the busiest there can be. Two-point control of mixed
 * water is on for C·ΔT/(P − L) and off for C·ΔT/L; the sum is least at L = P/2, where it is 4·C·ΔT/P. The room of the
 * simulated day need not be that cold (for a chiller: warm), but some day of the year may. Devices of one band act as
 * one.
 * @returns starts an hour; NaN when a figure is unknown
 */
export function startsAtHalfLoad(
  context: RuleContext,
  numbers: ResolvedSystem,
  { type, tank }: Equipment,
  band: Thermostat,
): number {
  const joined = joinedWith(context, numbers, tank);
  const together = numbers.devices.filter(
    ({ equipment }) =>
      equipment.type === type && joined.includes(equipment.tank) && isSameBand(thermostatOf(equipment), band),
  );
  const watts = together.reduce((sum, one) => sum + (type === 'chiller' ? one.coolingW : one.watts * one.heatShare), 0);
  const heat =
    heatPerKelvin(numbers, volumeOf(numbers, joined), (band.lowC + band.highC) / 2) * (band.highC - band.lowC);
  return HOUR / Math.max((4 * heat) / watts, (band.minOnS ?? 0) + (band.minOffS ?? 0));
}

function isSameBand(one: Thermostat | null, other: Thermostat): boolean {
  return one?.lowC === other.lowC && one.highC === other.highC && one.sensors.join() === other.sensors.join();
}
