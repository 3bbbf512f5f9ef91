import { ok, type Result, refused } from '../result';
import { SENSOR_QUANTITIES, type SensorQuantity } from '../facility/system';
import given from './units.json';

/** How a unit becomes that of the facility file: (value − zero) × times ÷ over. */
interface Conversion {
  times: number;
  over?: number;
  zero?: number;
  source: string;
}

const UNITS: Readonly<Record<SensorQuantity, { unit: string; units: Readonly<Record<string, Conversion>> }>> = given;

/** Why a unit is not understood: it is one of other quantities, or of none. */
export interface UnitFault {
  why: 'other-quantity' | 'unknown-unit';
}

/**
 * A value in the facility file's unit of a quantity.
 *
 * @param value   in `unit`; finite
 * @param unit    as it was written; the facility file's own when absent or empty
 * @returns       in °C, mm, L/h, practical salinity, mg/L, 1 or 0, W, pH, %, mS/cm, mV, mg/L as N or P, mmol/L, kPa, NTU; or
 *                why the unit cannot be one of this quantity
 */
export function toFacilityUnit(quantity: SensorQuantity, value: number, unit?: string): Result<number, UnitFault> {
  if (unit === undefined || unit === '') return ok(value);
  const { units } = UNITS[quantity];
  const how = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (how) return ok(((value - (how.zero ?? 0)) * how.times) / (how.over ?? 1));
  const isKnown = SENSOR_QUANTITIES.some((other) => Object.hasOwn(UNITS[other].units, unit));
  return refused({ why: isKnown ? 'other-quantity' : 'unknown-unit' });
}

/** Units that a quantity may come in, the facility file's own first. */
export function unitsOf(quantity: SensorQuantity): string[] {
  const { unit, units } = UNITS[quantity];
  return [unit, ...Object.keys(units).filter((other) => other !== unit)];
}
