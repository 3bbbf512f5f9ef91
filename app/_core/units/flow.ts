import { fromCore, type Scale, toCore } from './scale';

export type FlowUnit = 'm3/s' | 'm3/h' | 'L/h' | 'L/min' | 'galUS/h' | 'galUS/min' | 'galUK/h';

const FLOW: Scale<FlowUnit> = {
  quantity: 'flow',
  factors: {
    'm3/s': 1,
    'm3/h': 1 / 3600,
    'L/h': 1e-3 / 3600,
    'L/min': 1e-3 / 60,
    'galUS/h': 3.785411784e-3 / 3600,
    'galUS/min': 3.785411784e-3 / 60,
    'galUK/h': 4.54609e-3 / 3600,
  },
  low: 0,
  high: 100,
};

/**
 * @param value in `unit`, 0 to 100 m³/s
 * @returns     m³/s
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toCubicMetresPerSecond(value: number, unit: FlowUnit): number {
  return toCore(FLOW, value, unit);
}

/**
 * @param cubicMetresPerSecond m³/s, 0 to 100 m³/s
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromCubicMetresPerSecond(cubicMetresPerSecond: number, unit: FlowUnit): number {
  return fromCore(FLOW, cubicMetresPerSecond, unit);
}
