import { describe, expect, test } from 'vitest';
import { heatCapacityIpts68 } from '#core/water/heat-capacity';
import { pressureFromAltitude } from '#core/water/pressure-from-altitude';
import { respirationFactor } from '#core/water/respiration';
import { salinityVapourFactor } from '#core/water/salinity-vapour-factor';
import { stillSurfaceTransfer } from '#core/water/still-surface-transfer';
import { vapourPressure } from '#core/water/vapour-pressure';

// Each docstring names the limits to which its law goes on outside the published range; here they are held to it.
const limits: [string, (x: number) => number, number, number][] = [
  ['heat capacity, by temperature', (t) => heatCapacityIpts68(t, 35), -5, 60],
  ['heat capacity, by salinity', (s) => heatCapacityIpts68(20, s), 0, 100],
  ['pressure, by altitude', pressureFromAltitude, -1000, 11_000],
  ['respiration, by temperature', respirationFactor, -20, 60],
  ['vapour factor, by salinity', salinityVapourFactor, 0, 300],
  ['still surface, by temperature', stillSurfaceTransfer, 0, 40],
  ['vapour pressure, by temperature', vapourPressure, -40, 200],
];

describe.each(limits)('%s', (_name, compute, low, high) => {
  const step = 1e-4 * (high - low);

  test('still moves just inside its limits', () => {
    expect(compute(low + step)).not.toBe(compute(low));
    expect(compute(high - step)).not.toBe(compute(high));
  });

  test('stands still outside them', () => {
    expect(compute(low - step)).toBe(compute(low));
    expect(compute(high + step)).toBe(compute(high));
  });
});
