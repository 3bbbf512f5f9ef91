import { type Law, law } from './law';

/**
 * Salinity of a system into which other water runs while nothing leaves it: the level rises.
 *
 *   S = (S0·V + S_in·q) / (V + q)
 *
 * @param salinity PSS-78 of the system; 0 to 100
 * @param incoming PSS-78 of the water that runs in, 0 for fresh; 0 to 100
 * @param volume   m³     of the system before; 0.0001 to 1e6
 * @param added    m³     run in so far; 0 to 1e6
 * @returns        PSS-78
 *
 * Holds      while something mixes the water and the rim is not reached. Beyond the range: the formula; less than
 *            nothing added counts as nothing, a volume of nothing as 1e-9 m³.
 * Leaves out the 2.6 % by which a litre of sea water is heavier than one of fresh.
 * Source     Conservation of salt.
 * Checked    tests/core/water/dilution.test.ts: closed form, and the salt before and after.
 */
export function dilutionRising(salinity: number, incoming: number, volume: number, added: number): number {
  const share = Math.max(0, added) / (Math.max(1e-9, volume) + Math.max(0, added));
  return salinity + (incoming - salinity) * share;
}

export const dilutionRisingLaw: Law<[salinity: number, incoming: number, volume: number, added: number]> = law(
  'dilution-rising',
  '',
  dilutionRising,
  [
    { name: 'salinity', unit: '', low: 0, high: 100 },
    { name: 'incoming', unit: '', low: 0, high: 100 },
    { name: 'volume', unit: 'm³', low: 1e-4, high: 1e6 },
    { name: 'added', unit: 'm³', low: 0, high: 1e6 },
  ],
);
