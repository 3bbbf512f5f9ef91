import { type Law, law } from './law';

/** J/K: a thermal mass below this counts as this. */
const LEAST_CAPACITY = 1e-6;

/** W: a drive that would take longer than the world has stood is none. */
const LEAST_DRIVE = 1e-30;

/**
 * How long one well-mixed lump takes to reach a temperature.
 *
 *   t = τ·ln((T0 − T∞)/(Tlimit − T∞))      T∞ = room + P/UA      τ = C/UA
 *
 * @param start        °C  −5 to 60
 * @param room         °C  air, held constant; −30 to 60
 * @param power        W   into the water, below 0 for a chiller; ±10 million
 * @param heatCapacity J/K C: water, glass, sand and rock; 100 to 1e13
 * @param loss         W/K UA: heat lost for each degree above the room; 0 to 1e7
 * @param limit        °C  −5 to 60
 * @returns            s   Infinity when the limit is never reached
 *
 * Holds      as `lumpTemperature`, whose inverse it is. Beyond the range: the formula; a negative loss counts as none, and a heat
 *            capacity of nothing as a millionth of a joule per kelvin.
 * Leaves out what `lumpTemperature` leaves out.
 * Source     Lumped-capacitance cooling, heat-transfer textbooks, transient conduction (from memory).
 * Checked    tests/core/water/time-to-limit.test.ts: inverse of the curve, and the reference ODE library to 1e-9.
 */
export function timeToLimit(
  start: number,
  room: number,
  power: number,
  heatCapacity: number,
  loss: number,
  limit: number,
): number {
  const away = limit - start;
  const leak = Math.max(0, loss);
  // Power that warms the water at the start, W. When it points away from the limit, the limit is never reached.
  const drive = power + leak * (room - start);
  const capacity = Math.max(LEAST_CAPACITY, heatCapacity);
  if (Number.isNaN(away + drive + capacity)) return Number.NaN;
  if (away === 0) return 0;
  if (Math.abs(drive) < LEAST_DRIVE || away > 0 !== drive > 0) return Number.POSITIVE_INFINITY;
  const share = leak * (away / drive);
  if (share >= 1) return Number.POSITIVE_INFINITY;
  return capacity * (away / drive) * slowing(share);
}

/** How much longer the loss makes the way, having covered this share of it: −ln(1 − s)/s, and 1 at 0. */
function slowing(share: number): number {
  return share === 0 ? 1 : -Math.log1p(-share) / share;
}

export const timeToLimitLaw: Law<
  [start: number, room: number, power: number, heatCapacity: number, loss: number, limit: number]
> = law('time-to-limit', 's', timeToLimit, [
  { name: 'start', unit: '°C', low: -5, high: 60 },
  { name: 'room', unit: '°C', low: -30, high: 60 },
  { name: 'power', unit: 'W', low: -1e7, high: 1e7 },
  { name: 'heatCapacity', unit: 'J/K', low: 100, high: 1e13 },
  { name: 'loss', unit: 'W/K', low: 0, high: 1e7 },
  { name: 'limit', unit: '°C', low: -5, high: 60 },
]);
