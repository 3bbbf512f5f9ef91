import { held, type Law, law } from './law';

/** ln 1.024, per K: the slope of `gasTransferFactor` divided by the factor itself. */
export const GAS_TRANSFER_LOG_SLOPE = Math.log(1.024);

/**
 * How fast gas passes between water and air at a temperature, as a multiple of the speed at 20 °C.
 *
 *   kLa(t) = kLa(20 °C) · 1.024^(t − 20)
 *
 * @param temperature °C 5 to 35
 * @returns           a pure number, 1 at 20 °C
 *
 * Holds      for surfaces, bubbles and falls alike (the range is from memory). Beyond the range: the same power, held
 *            only 300 K either side of 20 °C.
 * Leaves out salt, which makes bubbles smaller and transfer faster, and oils or foods that slow it.
 * Source     SWAT+ documentation, reaeration 7:3.5.4 (swatplus.gitbook.io); others print 1.025.
 * Checked    tests/core/water/gas-transfer.test.ts: the power itself, and the Schmidt number within 4 %.
 */
export function gasTransferFactor(temperature: number): number {
  return Math.exp(GAS_TRANSFER_LOG_SLOPE * held(temperature - 20, -300, 300));
}

/**
 * How that multiple changes with temperature.
 *
 * @param temperature °C as above
 * @returns           1/K
 *
 * Holds, leaves out: as `gasTransferFactor`, of which it is the exact derivative.
 * Checked    against central differences.
 */
export function gasTransferFactorSlope(temperature: number): number {
  return GAS_TRANSFER_LOG_SLOPE * gasTransferFactor(temperature);
}

export const gasTransferFactorLaw: Law<[temperature: number]> = law('gas-transfer', '', gasTransferFactor, [
  { name: 'temperature', unit: '°C', low: 5, high: 35 },
]);
