import { type Law, law } from './law';

/**
 * Salinity of a full system into which other water runs while as much mixed water leaves by the overflow.
 *
 *   S = S_in + (S0 − S_in)·e^(−q/V)
 *
 * @param salinity PSS-78 of the system; 0 to 100
 * @param incoming PSS-78 of the water that runs in, 0 for fresh; 0 to 100
 * @param volume   m³     of the system; 0.0001 to 1e6
 * @param added    m³     run in so far; 0 to 1e6
 * @returns        PSS-78
 *
 * Holds      while something mixes the water. Beyond the range: the formula; less than nothing added counts as nothing,
 *            a volume of nothing as 1e-9 m³.
 * Leaves out the 2.6 % by which a litre of sea water is heavier than one of fresh.
 * Source     Dilution of a stirred tank at constant volume, chemical engineering textbooks (from memory).
 * Checked    tests/core/water/dilution.test.ts: closed form, and the reference ODE library to 1e-9.
 */
export function dilutionOverflowing(salinity: number, incoming: number, volume: number, added: number): number {
  return incoming + (salinity - incoming) * Math.exp(-Math.max(0, added) / Math.max(1e-9, volume));
}

export const dilutionOverflowingLaw: Law<[salinity: number, incoming: number, volume: number, added: number]> = law(
  'dilution-overflowing',
  '',
  dilutionOverflowing,
  [
    { name: 'salinity', unit: '', low: 0, high: 100 },
    { name: 'incoming', unit: '', low: 0, high: 100 },
    { name: 'volume', unit: 'm³', low: 1e-4, high: 1e6 },
    { name: 'added', unit: 'm³', low: 0, high: 1e6 },
  ],
);
