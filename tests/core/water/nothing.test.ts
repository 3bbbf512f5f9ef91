import { expect, test } from 'vitest';
import { concentrationByEvaporation } from '#core/water/concentration-by-evaporation';
import { continuousLoad } from '#core/water/continuous-load';
import { lumpTemperature } from '#core/water/cooling';
import { dilutionOverflowing } from '#core/water/dilution-overflowing';
import { dilutionRising } from '#core/water/dilution-rising';
import { drainDownDepth } from '#core/water/drain-down';
import { drainRate } from '#core/water/drain-rate';
import { drainTime } from '#core/water/drain-time';
import { CALM } from '#core/water/evaporation-transfer';
import { gasTransferFactor } from '#core/water/gas-transfer';
import { timeToLimit } from '#core/water/time-to-limit';
import { upsRunTime } from '#core/water/ups-run-time';
import { weirFlow, weirHead } from '#core/water/weir';

// The integrator may hand a law a value a rounding below zero: it counts as zero, exactly, and the law goes on.

test('less than nothing added, lost or elapsed changes nothing', () => {
  expect(dilutionOverflowing(35, 0, 0.5, -0.1)).toBe(35);
  expect(dilutionRising(35, 0, 0.5, -0.1)).toBe(35);
  expect(concentrationByEvaporation(35, 0.5, -0.1)).toBe(35);
  expect(lumpTemperature(25, 20, 300, 1e6, 20, -60)).toBe(25);
});

test('a system without water is at once what runs into it', () => {
  expect(dilutionOverflowing(35, 5, 0, 0.1)).toBe(5);
  expect(dilutionRising(35, 5, 0, 0.1)).toBeCloseTo(5, 6);
  expect(dilutionRising(35, 5, 0, 0)).toBe(35);
  expect(concentrationByEvaporation(35, 0, 0)).toBe(35);
});

test('a thermal mass of nothing is at rest at once, and a negative loss is none', () => {
  expect(lumpTemperature(25, 20, 0, 0, 20, 1)).toBeCloseTo(20, 9);
  expect(timeToLimit(25, 20, 0, 0, 20, 22)).toBeLessThan(1e-6);
  expect(lumpTemperature(25, 20, 300, 1e6, -20, 60)).toBe(lumpTemperature(25, 20, 300, 1e6, 0, 60));
  expect(timeToLimit(25, 20, 300, 1e6, -20, 26)).toBe(timeToLimit(25, 20, 300, 1e6, 0, 26));
});

test('no opening, no head and no edge let no water through', () => {
  expect(Math.abs(drainRate(-0.6, 0.01, 1))).toBe(0);
  expect(Math.abs(drainRate(0.6, -0.01, 1))).toBe(0);
  expect(Math.abs(weirFlow(-1, 0.1, 0))).toBe(0);
  expect(weirHead(1, -0.1)).toBe(0);
  expect(weirFlow(1, 0.1, -2)).toBe(weirFlow(1, 0.1, 0));
});

test('draining to below the outlet ends at the outlet, and an empty tank is drained', () => {
  expect(drainTime(1, 0.6, 0.01, 1, -1)).toBe(drainTime(1, 0.6, 0.01, 1, 0));
  expect(drainTime(1, 0.6, 0.01, -1, -2)).toBe(0);
  expect(drainTime(-1, 0.6, 0.01, 1, 0)).toBe(0);
  expect(drainTime(1, -0.6, 0.01, 1, 0)).toBe(Number.POSITIVE_INFINITY);
  expect(drainTime(1, 0.6, -0.01, 1, 0)).toBe(Number.POSITIVE_INFINITY);
});

test('a crest above the running level is at it', () => {
  expect(drainDownDepth(-0.1, -0.2, -0.2)).toBe(0);
});

test('no battery, no voltage and no breaker carry nothing', () => {
  const battery: [number, number, number, number, number, number] = [12, 9, 2, 0.5, 0.9, 1];
  for (const i of battery.keys()) {
    const [volts, ampHours, batteries, depth, efficiency, ageing] = battery.with(i, -1) as typeof battery;
    expect(upsRunTime(volts, ampHours, batteries, depth, efficiency, ageing, 150)).toBe(0);
  }
  expect(upsRunTime(12, 9, 2, 0.5, 0.9, 1, -150)).toBe(Number.POSITIVE_INFINITY);
  expect(Math.abs(continuousLoad(16, -230))).toBe(0);
});

test('gas transfer goes on without limit as far as any water, and is held where the power would overflow', () => {
  expect(gasTransferFactor(319)).toBeLessThan(gasTransferFactor(320));
  expect(gasTransferFactor(1e6)).toBe(gasTransferFactor(320));
  expect(gasTransferFactor(-1e6)).toBe(gasTransferFactor(-280));
});

test('a calm surface has the activity that was measured on unoccupied pools', () => {
  // doaj.org 7e0830c6948540f796a99dba41d52da1: 0.50 to 0.57.
  expect(CALM).toBe(0.5);
});
