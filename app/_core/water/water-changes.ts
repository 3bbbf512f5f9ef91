import { dilutionOverflowing } from './dilution-overflowing';
import { held, type Law, law } from './law';

/**
 * What is left of something dissolved after several water changes.
 *
 *   C = C0·(1 − f)^n + Cin·(1 − (1 − f)^n)
 *
 * @param start    g/m³ before; 0 to 1e6
 * @param fresh    g/m³ in the water put in; 0 to 1e6
 * @param fraction 1    of the water changed each time; 0 to 1
 * @param changes  1    how many; 0 to 1000
 * @returns        g/m³ three changes of a fifth leave 51 %, not 40 %
 *
 * Holds      for changes mixed through, nothing added between. Beyond the range: the formula, fraction held between 0 and 1,
 *            changes between 0 and 1e6.
 * Leaves out what animals go on giving off, and what sits in sand and filters.
 * Source     closed form.
 * Checked    tests/core/water/water-changes.test.ts.
 */
export function waterChanges(start: number, fresh: number, fraction: number, changes: number): number {
  const f = held(fraction, 0, 1);
  // NaN to the power of 0 would be 1: what is broken must stay so.
  const left = (1 - f) ** held(changes, 0, 1e6) + 0 * f;
  return start * left + fresh * (1 - left);
}

/**
 * What is left under a steady exchange of water, while something gives off more.
 *
 *   C = C∞ + (C0 − C∞)·e^(−Q·t/V)      C∞ = Cin + P/Q
 *
 * @param start   g/m³ at first; 0 to 1e6
 * @param fresh   g/m³ in the water that comes; 0 to 1e6
 * @param source  g/h  given off in the system; 0 to 1e6
 * @param flow    m³/h that comes and goes; 1e-6 to 1e4
 * @param volume  m³   1e-3 to 1e5
 * @param elapsed h    0 to 1e5
 * @returns       g/m³ one volume exchanged takes out 63 %, 2.3 volumes 90 %
 *
 * Holds      for mixed water. Beyond the range: the formula; less than nothing of flow, volume or time counts as hardly any.
 * Leaves out short cuts from inlet to outlet.
 * Source     closed form.
 * Checked    tests/core/water/water-changes.test.ts: beside odex.
 */
export function steadyExchange(
  start: number,
  fresh: number,
  source: number,
  flow: number,
  volume: number,
  elapsed: number,
): number {
  const q = Math.max(1e-9, flow);
  return dilutionOverflowing(start, fresh + source / q, Math.max(1e-9, volume), q * Math.max(0, elapsed));
}

const START = { name: 'start', unit: 'g/m³', low: 0, high: 1e6 };
const FRESH = { name: 'fresh', unit: 'g/m³', low: 0, high: 1e6 };

export const waterChangesLaw: Law<[start: number, fresh: number, fraction: number, changes: number]> = law(
  'water-changes',
  'g/m³',
  waterChanges,
  [START, FRESH, { name: 'fraction', unit: '', low: 0, high: 1 }, { name: 'changes', unit: '', low: 0, high: 1000 }],
);

export const steadyExchangeLaw: Law<
  [start: number, fresh: number, source: number, flow: number, volume: number, elapsed: number]
> = law('steady-exchange', 'g/m³', steadyExchange, [
  START,
  FRESH,
  { name: 'source', unit: 'g/h', low: 0, high: 1e6 },
  { name: 'flow', unit: 'm³/h', low: 1e-6, high: 1e4 },
  { name: 'volume', unit: 'm³', low: 1e-3, high: 1e5 },
  { name: 'elapsed', unit: 'h', low: 0, high: 1e5 },
]);
