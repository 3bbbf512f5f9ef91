import { fromCore, type Scale, toCore } from './scale';

export type PressureUnit = 'Pa' | 'hPa' | 'kPa' | 'atm' | 'mmHg' | 'inHg';

const PRESSURE: Scale<PressureUnit> = {
  quantity: 'pressure',
  factors: { Pa: 1, hPa: 100, kPa: 1000, atm: 101_325, mmHg: 133.322387415, inHg: 3386.388640341 },
  low: 0,
  high: 1e8,
};

/**
 * @param value in `unit`, 0 to 1000 bar
 * @returns     Pa
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toPascals(value: number, unit: PressureUnit): number {
  return toCore(PRESSURE, value, unit);
}

/**
 * @param pascals Pa, 0 to 1000 bar
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromPascals(pascals: number, unit: PressureUnit): number {
  return fromCore(PRESSURE, pascals, unit);
}
