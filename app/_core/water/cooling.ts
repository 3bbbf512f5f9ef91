import { type Law, law } from './law';

/** J/K: a thermal mass below this counts as this, so that nothing is divided by zero. */
const LEAST_CAPACITY = 1e-6;

/**
 * Water temperature some time after a steady power sets in (or stops: then the power is 0), one well-mixed lump.
 *
 *   T(t) = T∞ + (T0 − T∞)·e^(−t/τ)      T∞ = room + P/UA      τ = C/UA
 *
 * @param start        °C  −5 to 60
 * @param room         °C  air, held constant; −30 to 60
 * @param power        W   into the water, below 0 for a chiller; ±10 million
 * @param heatCapacity J/K C: water, glass, sand and rock; 100 to 1e13
 * @param loss         W/K UA: heat lost for each degree above the room; 0 to 1e7
 * @param elapsed      s   0 to 3e9
 * @returns            °C
 *
 * Holds      while something mixes the water. Without loss the line T0 + P·t/C, exactly. Beyond the range: the formula;
 *            a negative loss or time counts as none, and a heat capacity of nothing as a millionth of a joule per kelvin.
 * Leaves out evaporation's bend with temperature: put its slope into `loss`. A stopped return parts sump and tanks.
 * Source     Lumped-capacitance cooling, heat-transfer textbooks, transient conduction (from memory).
 * Checked    tests/core/water/cooling.test.ts: the curve itself, and the reference ODE library to 1e-9.
 */
export function lumpTemperature(
  start: number,
  room: number,
  power: number,
  heatCapacity: number,
  loss: number,
  elapsed: number,
): number {
  const capacity = Math.max(LEAST_CAPACITY, heatCapacity);
  const leak = Math.max(0, loss);
  const time = Math.max(0, elapsed);
  const drive = (power + leak * (room - start)) / capacity;
  return start + drive * time * meanFade((leak * time) / capacity);
}

/** Mean of e^(−x) over the way to x: (1 − e^(−x))/x, and 1 at 0, so that no loss needs no case of its own. */
function meanFade(x: number): number {
  return x === 0 ? 1 : -Math.expm1(-x) / x;
}

export const lumpTemperatureLaw: Law<
  [start: number, room: number, power: number, heatCapacity: number, loss: number, elapsed: number]
> = law('cooling', '°C', lumpTemperature, [
  { name: 'start', unit: '°C', low: -5, high: 60 },
  { name: 'room', unit: '°C', low: -30, high: 60 },
  { name: 'power', unit: 'W', low: -1e7, high: 1e7 },
  { name: 'heatCapacity', unit: 'J/K', low: 100, high: 1e13 },
  { name: 'loss', unit: 'W/K', low: 0, high: 1e7 },
  { name: 'elapsed', unit: 's', low: 0, high: 3e9 },
]);
