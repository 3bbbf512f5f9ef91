import { fromCore, type Scale, toCore } from './scale';

export type PowerUnit = 'W' | 'kW' | 'Btu/h';

const POWER: Scale<PowerUnit> = {
  quantity: 'power',
  factors: { W: 1, kW: 1000, 'Btu/h': 1055.05585262 / 3600 },
  low: 0,
  high: 1e8,
};

/**
 * @param value in `unit`, 0 to 100 MW
 * @returns     W
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toWatts(value: number, unit: PowerUnit): number {
  return toCore(POWER, value, unit);
}

/**
 * @param watts W, 0 to 100 MW
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromWatts(watts: number, unit: PowerUnit): number {
  return fromCore(POWER, watts, unit);
}
