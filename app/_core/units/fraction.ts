import { fromCore, type Scale, toCore } from './scale';

export type FractionUnit = '1' | '%';

const FRACTION: Scale<FractionUnit> = {
  quantity: 'fraction',
  factors: { '1': 1, '%': 1e-2 },
  low: 0,
  high: 1,
};

/**
 * @param value a share in `unit`, 0 to 1 (0 to 100 %)
 * @returns     a part of 1
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toFraction(value: number, unit: FractionUnit): number {
  return toCore(FRACTION, value, unit);
}

/**
 * @param fraction a part of 1, 0 to 1 (0 to 100 %)
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromFraction(fraction: number, unit: FractionUnit): number {
  return fromCore(FRACTION, fraction, unit);
}
