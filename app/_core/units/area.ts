import { fromCore, type Scale, toCore } from './scale';

export type AreaUnit = 'm2' | 'cm2' | 'ft2' | 'in2';

const AREA: Scale<AreaUnit> = {
  quantity: 'area',
  factors: { m2: 1, cm2: 1e-4, ft2: 0.09290304, in2: 6.4516e-4 },
  low: 0,
  high: 1e6,
};

/**
 * @param value in `unit`, 0 to a million square metres
 * @returns     m²
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toSquareMetres(value: number, unit: AreaUnit): number {
  return toCore(AREA, value, unit);
}

/**
 * @param squareMetres m², 0 to a million square metres
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromSquareMetres(squareMetres: number, unit: AreaUnit): number {
  return fromCore(AREA, squareMetres, unit);
}
