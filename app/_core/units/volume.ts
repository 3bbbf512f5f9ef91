import { fromCore, type Scale, toCore } from './scale';

export type VolumeUnit = 'm3' | 'L' | 'mL' | 'galUS' | 'galUK';

const VOLUME: Scale<VolumeUnit> = {
  quantity: 'volume',
  factors: { m3: 1, L: 1e-3, mL: 1e-6, galUS: 3.785411784e-3, galUK: 4.54609e-3 },
  low: 0,
  high: 1e6,
};

/**
 * @param value in `unit`, 0 to a million cubic metres
 * @returns     m³
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toCubicMetres(value: number, unit: VolumeUnit): number {
  return toCore(VOLUME, value, unit);
}

/**
 * @param cubicMetres m³, 0 to a million cubic metres
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromCubicMetres(cubicMetres: number, unit: VolumeUnit): number {
  return fromCore(VOLUME, cubicMetres, unit);
}
