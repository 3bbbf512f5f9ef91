import { type Law, law } from './law';

/** g/(m³·s): a loss that would take longer than the world has stood is none. */
const LEAST_DRIVE = 1e-30;

/**
 * How long oxygen takes to fall to a level.
 *
 *   t = ln((C0 − C∞)/(Ccrit − C∞)) / kLa      C∞ = C* − r/kLa      t = (C0 − Ccrit)/r without transfer
 *
 * @param start      g/m³     oxygen now; 0 to 50
 * @param critical   g/m³     the level; 0 to 50
 * @param saturation g/m³     C*, from `oxygenSaturation`; 0 to 50
 * @param transfer   1/s      kLa at the water's temperature; 0 to 1
 * @param demand     g/(m³·s) used by everything that breathes; 0 to 1
 * @returns          s        0 when it is already there; Infinity when transfer holds oxygen above it for ever
 *
 * Holds      while something mixes the water. Beyond the range: the formula; a negative transfer counts as none.
 * Leaves out that animals breathe less in thin water, so it errs on the safe side.
 * Source     Oxygen balance of a stirred tank, dC/dt = kLa·(C* − C) − r, integrated.
 * Checked    tests/core/water/hypoxia-time.test.ts: closed form, and the reference ODE library to 1e-9.
 */
export function hypoxiaTime(
  start: number,
  critical: number,
  saturation: number,
  transfer: number,
  demand: number,
): number {
  const way = start - critical;
  const k = Math.max(0, transfer);
  // Loss of oxygen at the level itself, g/(m³·s): while it is not above 0, the level is never reached.
  const drive = demand - k * (saturation - critical);
  if (Number.isNaN(way + drive)) return Number.NaN;
  if (way <= 0) return 0;
  if (drive <= LEAST_DRIVE) return Number.POSITIVE_INFINITY;
  const share = k * (way / drive);
  return (way / drive) * (share === 0 ? 1 : Math.log1p(share) / share);
}

export const hypoxiaTimeLaw: Law<
  [start: number, critical: number, saturation: number, transfer: number, demand: number]
> = law('hypoxia-time', 's', hypoxiaTime, [
  { name: 'start', unit: 'g/m³', low: 0, high: 50 },
  { name: 'critical', unit: 'g/m³', low: 0, high: 50 },
  { name: 'saturation', unit: 'g/m³', low: 0, high: 50 },
  { name: 'transfer', unit: '1/s', low: 0, high: 1 },
  { name: 'demand', unit: 'g/(m³·s)', low: 0, high: 1 },
]);
