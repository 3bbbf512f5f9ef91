import { type Law, law } from './law';

/** W/(m²·K) between water and wall; from memory, and it hardly matters beside the air side. */
export const WATER_SIDE = 300;

/** Conductivities and coefficients below this count as this, so that nothing is divided by zero. */
const NOTHING = 1e-9;

/** W/(m²·K) between wall and still air, radiation included (acquariofiliafacile.it, post 1149494). */
export const AIR_SIDE = 8;

/**
 * Resistance of one layer of a wall. Those of several layers are added.
 *
 *   R = d / k
 *
 * @param thickness    m       0 to 2
 * @param conductivity W/(m·K) above 0; see `materials.json`
 * @returns            m²·K/W
 *
 * Holds      for flat walls. Beyond the range: less than no thickness counts as none, no
 *            conductivity as 1e-9.
 * Leaves out corners, braces and seams.
 * Source     Steady conduction, any heat-transfer textbook (from memory).
 * Checked    tests/core/water/wall-transmittance.test.ts; tests/reference/wall-transmittance.json.
 */
export function layerResistance(thickness: number, conductivity: number): number {
  return Math.max(0, thickness) / Math.max(NOTHING, conductivity);
}

/**
 * Heat that passes a square metre of wall for each degree between water and room. Times the area in m²: W/K.
 *
 *   U = 1 / (1/h_in + ΣR + 1/h_out)
 *
 * @param inside     W/(m²·K) between water and wall; 5 to 2000 (`WATER_SIDE`; air on both sides: `AIR_SIDE`)
 * @param resistance m²·K/W   of the layers, summed; 0 to 50
 * @param outside    W/(m²·K) between wall and air; 1 to 100 (`AIR_SIDE`)
 * @returns          W/(m²·K)
 *
 * Holds      for walls with still air outside, to 15 %. Beyond the range: the formula; a side that passes nothing
 *            passes 1e-9.
 * Leaves out draughts, sun, and a wall that stands against another.
 * Source     Series resistances, any heat-transfer textbook (from memory).
 * Checked    tests/core/water/wall-transmittance.test.ts; tests/reference/wall-transmittance.json, 3 %.
 */
export function wallTransmittance(inside: number, resistance: number, outside: number): number {
  return 1 / (1 / Math.max(NOTHING, inside) + Math.max(0, resistance) + 1 / Math.max(NOTHING, outside));
}

export const layerResistanceLaw: Law<[thickness: number, conductivity: number]> = law(
  'layer-resistance',
  'm²·K/W',
  layerResistance,
  [
    { name: 'thickness', unit: 'm', low: 0, high: 2 },
    { name: 'conductivity', unit: 'W/(m·K)', low: 0.01, high: 500 },
  ],
);

export const wallTransmittanceLaw: Law<[inside: number, resistance: number, outside: number]> = law(
  'wall-transmittance',
  'W/(m²·K)',
  wallTransmittance,
  [
    { name: 'inside', unit: 'W/(m²·K)', low: 5, high: 2000 },
    { name: 'resistance', unit: 'm²·K/W', low: 0, high: 50 },
    { name: 'outside', unit: 'W/(m²·K)', low: 1, high: 100 },
  ],
);
