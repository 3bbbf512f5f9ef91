import { fromCore, type Scale, toCore } from './scale';

export type LengthUnit = 'm' | 'cm' | 'mm' | 'in' | 'ft';

const LENGTH: Scale<LengthUnit> = {
  quantity: 'length',
  factors: { m: 1, cm: 1e-2, mm: 1e-3, in: 0.0254, ft: 0.3048 },
  low: -12_000,
  high: 12_000,
};

/**
 * @param value in `unit`, −12 000 to 12 000 m (levels and altitudes have a sign)
 * @returns     m
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toMetres(value: number, unit: LengthUnit): number {
  return toCore(LENGTH, value, unit);
}

/**
 * @param metres m, −12 000 to 12 000 m (levels and altitudes have a sign)
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromMetres(metres: number, unit: LengthUnit): number {
  return fromCore(LENGTH, metres, unit);
}
