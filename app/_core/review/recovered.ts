import type { DayChange } from '../simulate/machine';
import type { Snapshot } from '../simulate/build';
import { STRIDE, TEMPERATURE } from '../simulate/plant';
import { readSlope } from '../simulate/signal';
import { pastThreshold } from '../simulate/watch';
import type { World } from '../simulate/world';

const DAY = 86_400;
/** K by which water may stand beside its normal day and still count as back in it. */
const NEAR_K = 0.05;

/**
 * Whether mended water is out of danger: nothing is being exceeded, nothing is on its way to a limit it would reach within a
 * day, and no tank is on its way to change by more than a day may bring.
 * @param normal the normal day that the mended system goes back to
 */
export function recovered(world: World, normal: Snapshot | null): boolean {
  if (world.exposures.length > 0 || world.beyondDay.some((since) => since !== null)) return false;
  const { stepper, machine, x } = world;
  const away = machine.limits.every(({ watch }) => {
    if (watch.signal.kind === 'lost') return true;
    if (watch.active) return true;
    const past = pastThreshold(watch, x, stepper.air);
    const toward = watch.sign * readSlope(watch.signal, x, stepper.f, stepper.air);
    return past < 0 && (toward <= 0 || -past / toward > DAY);
  });
  return away && machine.dayChanges.every((change) => staysWithin(world, change, normal));
}

/** Whether what a tank may still do, on top of what it did in the last 24 hours, stays within its limit of change. */
function staysWithin(world: World, change: DayChange, normal: Snapshot | null): boolean {
  const { node, sign, limit } = change;
  const now = world.x[STRIDE * node + TEMPERATURE] as number;
  const low = normal?.dayLow[node] ?? Number.POSITIVE_INFINITY;
  const high = normal?.dayHigh[node] ?? Number.NEGATIVE_INFINITY;
  const isBack = now >= low - NEAR_K && now <= high + NEAR_K;
  const drift = sign * (world.stepper.f[STRIDE * node + TEMPERATURE] as number);
  const reach = isBack ? sign * (sign > 0 ? high : low) : sign * now + Math.max(0, drift) * DAY;
  return reach - least(world, change) <= limit;
}

/** Lowest temperature of the last 24 hours (for a fall: highest, signs turned), °C. */
function least({ t, machine, record }: World, { node, sign, before }: DayChange): number {
  const index = STRIDE * node + TEMPERATURE;
  let lowest = t < DAY ? sign * (machine.initial[index] as number) - before : Number.POSITIVE_INFINITY;
  const { knots } = record;
  for (let i = knots.before(t - DAY); i < knots.length; i++) lowest = Math.min(lowest, sign * knots.value(i, index));
  return lowest;
}
