import type { SensorQuantity } from '../facility/system';
import type { Check } from './check';
import type { EntryValue } from './entry';

/**
 * How far a number may lie from the last one before it is asked about, in the facility file's unit; for the others a third
 * of the last one. Common practice, no source.
 */
const FAR: Partial<Record<SensorQuantity, number>> = { temperature: 3, salinity: 3, oxygen: 2, ph: 0.5, level: 50 };
const FAR_SHARE = 1 / 3;
/** Rounds before this one that a number is held against. Common practice, no source. */
export const LOOK_BACK = 3;

/**
 * Whether a number lies so far from the last one that it may have been mistyped.
 * @param last in the same unit; null when there is none
 */
export function isFar(quantity: SensorQuantity, value: number, last: number | null): boolean {
  if (last === null) return false;
  return Math.abs(value - last) > (FAR[quantity] ?? Math.abs(last) * FAR_SHARE);
}

/**
 * The lines whose number is the same to the last digit as on each of the three rounds before: perhaps nobody looked. Exact
 * zeros are left out, for what is not there is often measured as such.
 * @param now what stands on this round, by line
 * @param before what stood on each of the rounds before, the latest first
 */
export function lookAlikes(
  checks: readonly Check[],
  now: ReadonlyMap<string, EntryValue>,
  before: readonly ReadonlyMap<string, EntryValue>[],
): Check[] {
  const recent = before.slice(0, LOOK_BACK);
  if (recent.length < LOOK_BACK) return [];
  return checks.filter(({ key }) => {
    const value = now.get(key);
    if (value?.kind !== 'number' || value.value === 0) return false;
    return recent.every((round) => {
      const then = round.get(key);
      return then?.kind === 'number' && then.value === value.value;
    });
  });
}
