import fc from 'fast-check';
import { expect, test } from 'vitest';
import { GAS_TRANSFER_LOG_SLOPE, gasTransferFactor, gasTransferFactorSlope } from '#core/water/gas-transfer';
import { stillSurfaceTransfer } from '#core/water/still-surface-transfer';
import { slopeOf } from './numerics';

const temperature = fc.double({ min: 0, max: 40, noNaN: true });

test('is 1.024 to the power of the degrees above 20', () => {
  expect(gasTransferFactor(20)).toBe(1);
  for (const t of [5, 10, 25, 30, 35])
    expect(Math.abs(gasTransferFactor(t) / 1.024 ** (t - 20) - 1)).toBeLessThan(1e-12);
});

test('the other printed base, 1.025, differs by no more than 1.5 % between 5 and 35 °C', () => {
  // ponce.sdsu.edu/onlineoxygenation.php, after Chin 2006.
  for (const t of [5, 35]) expect(Math.abs(gasTransferFactor(t) / 1.025 ** (t - 20) - 1)).toBeLessThan(0.015);
});

test('the Schmidt number, which is physics and not a fit, says the same within 4 % from 10 to 30 °C', () => {
  for (const t of [10, 15, 25, 30]) {
    const physical = stillSurfaceTransfer(t) / stillSurfaceTransfer(20);
    expect(Math.abs(gasTransferFactor(t) / physical - 1)).toBeLessThan(0.04);
  }
});

test('the slope is that of the factor, by central differences', () => {
  fc.assert(
    fc.property(temperature, (t) => {
      const slope = slopeOf(gasTransferFactor, t, 0.05);
      expect(gasTransferFactorSlope(t) / slope).toBeCloseTo(1, 9);
      expect((GAS_TRANSFER_LOG_SLOPE * gasTransferFactor(t)) / slope).toBeCloseTo(1, 9);
    }),
  );
});
