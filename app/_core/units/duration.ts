import { fromCore, type Scale, toCore } from './scale';

export type DurationUnit = 's' | 'min' | 'h' | 'd';

const DURATION: Scale<DurationUnit> = {
  quantity: 'duration',
  factors: { s: 1, min: 60, h: 3600, d: 86_400 },
  low: 0,
  high: 4e9,
};

/**
 * @param value in `unit`, 0 to about 125 years
 * @returns     s
 * @throws      RangeError when it is not a number or beyond belief
 */
export function toSeconds(value: number, unit: DurationUnit): number {
  return toCore(DURATION, value, unit);
}

/**
 * @param seconds s, 0 to about 125 years
 * @returns     the same in `unit`
 * @throws      RangeError when it is not a number or beyond belief
 */
export function fromSeconds(seconds: number, unit: DurationUnit): number {
  return fromCore(DURATION, seconds, unit);
}
