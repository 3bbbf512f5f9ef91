import { type Law, law } from './law';

/**
 * How long the batteries of a UPS carry a load.
 *
 *   t = 3600 · V · Ah · N · depth · efficiency · ageing / P
 *
 * @param volts      V  of one battery; 1 to 1000
 * @param ampHours   Ah of one battery; 0.1 to 10 000
 * @param batteries     how many; 1 to 1000
 * @param depth         part of the charge that may be used; 0.5 is kind to lead; 0.05 to 1
 * @param efficiency    of the inverter; 0.3 to 1
 * @param ageing        part of the new capacity that is left; 0.7 to 0.8 for old lead; 0.05 to 1
 * @param load       W  0.1 to 1e6
 * @returns          s  0 when there is no charge; Infinity without load
 *
 * Holds      for discharges of an hour and more. Beyond the range: the formula; less than nothing counts as nothing.
 * Leaves out that a battery emptied within an hour gives about 30 % less (from memory), cold, and start-up currents.
 *            A UPS whose battery was never tested under load is not a safeguard.
 * Source     shipcalculators.com, UPS battery runtime; ageing battery-calculator.com, UPS battery runtime equation.
 * Checked    tests/core/water/ups-run-time.test.ts; tests/reference/ups-run-time.json.
 */
export function upsRunTime(
  volts: number,
  ampHours: number,
  batteries: number,
  depth: number,
  efficiency: number,
  ageing: number,
  load: number,
): number {
  const charge = Math.max(0, volts) * Math.max(0, ampHours) * Math.max(0, batteries);
  const usable = 3600 * charge * Math.max(0, depth) * Math.max(0, efficiency) * Math.max(0, ageing);
  const power = Math.max(0, load);
  if (usable === 0) return Number.isNaN(power) ? power : 0;
  return usable / power;
}

export const upsRunTimeLaw: Law<
  [volts: number, ampHours: number, batteries: number, depth: number, efficiency: number, ageing: number, load: number]
> = law('ups-run-time', 's', upsRunTime, [
  { name: 'volts', unit: 'V', low: 1, high: 1000 },
  { name: 'ampHours', unit: 'Ah', low: 0.1, high: 10_000 },
  { name: 'batteries', unit: '', low: 1, high: 1000 },
  { name: 'depth', unit: '', low: 0.05, high: 1 },
  { name: 'efficiency', unit: '', low: 0.3, high: 1 },
  { name: 'ageing', unit: '', low: 0.05, high: 1 },
  { name: 'load', unit: 'W', low: 0.1, high: 1e6 },
]);
