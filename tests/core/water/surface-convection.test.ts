import { expect, test } from 'vitest';
import { evaporationTransfer } from '#core/water/evaporation-transfer';
import { SURFACE_COEFFICIENT, surfaceConvection } from '#core/water/surface-convection';

test('is 5 W/K for each square metre', () => {
  expect(surfaceConvection(0.72)).toBeCloseTo(3.6, 12);
  expect(surfaceConvection(10)).toBe(50);
  expect(surfaceConvection(-1)).toBe(0);
});

// No published value was read, so the figure from memory is held between two physical bounds.
test('lies between rising air alone and rising air with radiation, 4 K apart at 24 °C', () => {
  const rising = 1.52 * 4 ** (1 / 3);
  const radiation = 4 * 0.95 * 5.670374e-8 * 297.15 ** 3;
  expect(SURFACE_COEFFICIENT).toBeGreaterThan(rising);
  expect(SURFACE_COEFFICIENT).toBeLessThan(rising + radiation);
});

test('lies between the Bowen ratio on evaporation from a calm and from a broken surface', () => {
  // Psychrometric constant of air at one atmosphere, Pa/K.
  const bowen = 66.5;
  expect(SURFACE_COEFFICIENT).toBeGreaterThan(bowen * evaporationTransfer(1, 0, 0.5));
  expect(SURFACE_COEFFICIENT).toBeLessThan(bowen * evaporationTransfer(1, 0, 1));
});
