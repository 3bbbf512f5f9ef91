import { describe, expect, test } from 'vitest';
import materials from '#core/water/materials.json';
import { AIR_SIDE, layerResistance, WATER_SIDE, wallTransmittance } from '#core/water/wall-transmittance';
import { argument, cases, miss } from './reference';

// Btu/(h·ft²·°F) in W/(m²·K).
const INCH_POUND = 5.678263;

test.each(cases('wall-transmittance'))('maker’s table of acrylic sheet, air on both sides: %s', (_name, row) => {
  // The table's own surfaces: 0.166 m²·K/W for both together.
  const surface = 2 / 0.166;
  const resistance = layerResistance(argument(row, 0), materials.acrylic.conductivity);
  expect(miss(row, wallTransmittance(surface, resistance, surface) / INCH_POUND)).toBeLessThanOrEqual(1);
});

describe('a wet wall', () => {
  const wet = (thickness: number, conductivity: number) =>
    wallTransmittance(WATER_SIDE, layerResistance(thickness, conductivity), AIR_SIDE);

  test('is the sum of its resistances turned over', () => {
    expect(wet(0.01, 1)).toBeCloseTo(1 / (1 / 300 + 0.01 / 1 + 1 / 8), 12);
    expect(wet(0.05, 0.19)).toBeCloseTo(1 / (1 / 300 + 0.05 / 0.19 + 1 / 8), 12);
  });

  test('of glass hardly depends on its thickness, of acrylic it does', () => {
    const { glass, acrylic } = materials;
    expect(wet(0.006, glass.conductivity)).toBeCloseTo(7.44, 2);
    expect(wet(0.019, glass.conductivity)).toBeCloseTo(6.79, 2);
    expect(wet(0.006, acrylic.conductivity)).toBeCloseTo(6.25, 2);
    expect(wet(0.1, acrylic.conductivity)).toBeCloseTo(1.53, 2);
  });

  test('of two layers lets through less than of either', () => {
    const both = layerResistance(0.01, 1) + layerResistance(0.03, materials.insulated.conductivity);
    const insulated = wallTransmittance(WATER_SIDE, both, AIR_SIDE);
    expect(insulated).toBeLessThan(wet(0.01, 1));
    expect(insulated).toBeLessThan(wet(0.03, materials.insulated.conductivity));
  });
});

test('a wall of no conductivity lets nothing through, one of no thickness only its surfaces’ share', () => {
  expect(wallTransmittance(WATER_SIDE, layerResistance(0.01, 0), AIR_SIDE)).toBeLessThan(1e-6);
  expect(layerResistance(0.01, 0)).toBeCloseTo(1e7, 6);
  expect(wallTransmittance(WATER_SIDE, layerResistance(-1, 1), AIR_SIDE)).toBeCloseTo(1 / (1 / 300 + 1 / 8), 12);
});

test('every material says where its conductivity comes from, and memory is called memory', () => {
  for (const material of Object.values(materials)) {
    expect(material.source).toBeTruthy();
    expect(material.source.includes('from memory')).toBe(!material.seen);
  }
});
