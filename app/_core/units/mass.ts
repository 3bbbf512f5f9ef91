import { fromCore, type Scale, toCore } from './scale';

export type MassUnit = 'kg' | 'g' | 'lb' | 'oz';

const MASS: Scale<MassUnit> = {
  quantity: 'mass',
  factors: { kg: 1, g: 1e-3, lb: 0.45359237, oz: 0.028349523125 },
  low: 0,
  high: 1e9,
};

/**
 * @param value in `unit`, 0 to a thousand million kilograms
 * @returns     kg
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toKilograms(value: number, unit: MassUnit): number {
  return toCore(MASS, value, unit);
}

/**
 * @param kilograms kg, 0 to a thousand million kilograms
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromKilograms(kilograms: number, unit: MassUnit): number {
  return fromCore(MASS, kilograms, unit);
}
