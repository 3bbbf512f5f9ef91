import { fromCore, type Scale, toCore } from './scale';
import type { TemperatureUnit } from './temperature';

/** A dead band of 1 °F is 0.556 K: a difference has no 32 in it, and must never pass through `toCelsius`. */
const DIFFERENCE: Scale<TemperatureUnit> = {
  quantity: 'temperature difference',
  factors: { C: 1, F: 5 / 9 },
  low: -200,
  high: 200,
};

/**
 * @param value a difference or dead band in degrees of `unit`, −200 to 200 K
 * @returns     K
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toKelvinDifference(value: number, unit: TemperatureUnit): number {
  return toCore(DIFFERENCE, value, unit);
}

/**
 * @param kelvin K, −200 to 200
 * @returns      the same difference in degrees of `unit`
 * @throws       RangeError when it is not a number or beyond belief
 */
export function fromKelvinDifference(kelvin: number, unit: TemperatureUnit): number {
  return fromCore(DIFFERENCE, kelvin, unit);
}
