import { fromCore, type Scale, toCore } from './scale';

export type ConcentrationUnit = 'g/m3' | 'mg/L' | 'ug/L';

const CONCENTRATION: Scale<ConcentrationUnit> = {
  quantity: 'concentration',
  factors: { 'g/m3': 1, 'mg/L': 1, 'ug/L': 1e-3 },
  low: 0,
  high: 1e6,
};

/**
 * @param value in `unit`, 0 to a kilogram in a litre
 * @returns     g/m³
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toGramsPerCubicMetre(value: number, unit: ConcentrationUnit): number {
  return toCore(CONCENTRATION, value, unit);
}

/**
 * @param gramsPerCubicMetre g/m³, 0 to a kilogram in a litre
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromGramsPerCubicMetre(gramsPerCubicMetre: number, unit: ConcentrationUnit): number {
  return fromCore(CONCENTRATION, gramsPerCubicMetre, unit);
}
