import type { SensorQuantity } from '#core/facility/system';
import type { Random } from './random';

/** How a probe of a kind tells what it is held in. All common practice, no source: as the data sheets of such probes have it. */
interface Kind {
  /** Time constant, s. */
  lagS: number;
  /** Standard deviation of one reading, in the unit of the quantity. */
  noise: number;
  /** Least step it can show. */
  step: number;
  /** How far off one probe may be for good, either way. */
  off: number;
  /** How far it may wander in a day, and the days after which somebody calibrates it again; 0 for one that does not wander. */
  wandersPerDay: number;
  calibratedEvery: number;
}

const STEADY = { wandersPerDay: 0, calibratedEvery: 0 };

const KINDS: Record<SensorQuantity, Kind> = {
  temperature: { lagS: 240, noise: 0.02, step: 0.01, off: 0.08, ...STEADY },
  level: { lagS: 30, noise: 0.4, step: 0.5, off: 0.5, ...STEADY },
  flow: { lagS: 20, noise: 25, step: 10, off: 60, ...STEADY },
  salinity: { lagS: 120, noise: 0.03, step: 0.01, off: 0.15, wandersPerDay: 0.012, calibratedEvery: 30 },
  oxygen: { lagS: 240, noise: 0.02, step: 0.01, off: 0.06, wandersPerDay: 0.008, calibratedEvery: 21 },
  'oxygen-saturation': { lagS: 240, noise: 0.3, step: 0.1, off: 0.8, wandersPerDay: 0.08, calibratedEvery: 21 },
  leak: { lagS: 0, noise: 0, step: 1, off: 0, ...STEADY },
  watts: { lagS: 0, noise: 0.25, step: 0.1, off: 0, ...STEADY },
  ph: { lagS: 120, noise: 0.006, step: 0.01, off: 0.02, wandersPerDay: 0.0025, calibratedEvery: 28 },
  conductivity: { lagS: 120, noise: 0.05, step: 0.01, off: 0.2, wandersPerDay: 0.02, calibratedEvery: 30 },
  redox: { lagS: 600, noise: 1.5, step: 1, off: 8, wandersPerDay: 0.3, calibratedEvery: 28 },
  ammonia: { lagS: 0, noise: 0.01, step: 0.01, off: 0, ...STEADY },
  nitrite: { lagS: 0, noise: 0.005, step: 0.005, off: 0, ...STEADY },
  nitrate: { lagS: 0, noise: 0.25, step: 0.5, off: 0, ...STEADY },
  phosphate: { lagS: 0, noise: 0.008, step: 0.01, off: 0, ...STEADY },
  alkalinity: { lagS: 0, noise: 0.04, step: 0.05, off: 0, ...STEADY },
  pressure: { lagS: 5, noise: 0.3, step: 0.1, off: 0.5, ...STEADY },
  'carbon-dioxide': { lagS: 600, noise: 0.2, step: 0.1, off: 0.5, ...STEADY },
  oxidant: { lagS: 0, noise: 0.003, step: 0.005, off: 0, ...STEADY },
  turbidity: { lagS: 60, noise: 0.02, step: 0.01, off: 0.05, ...STEADY },
};

const DAY_MS = 86_400_000;

/** What one probe shows for what is really there: late, a little off, wandering until it is calibrated, in whole steps. */
export interface Instrument {
  /** @param atMs ms since 1970, not before the last one; `value` what is there */
  shows: (atMs: number, value: number) => number;
}

/**
 * @param random   of this probe alone
 * @param fromMs   when it begins to be read
 */
export function instrumentOf(quantity: SensorQuantity, random: Random, fromMs: number): Instrument {
  const { lagS, noise, step, off, wandersPerDay, calibratedEvery } = KINDS[quantity];
  const constant = random.between(-off, off);
  const perDay = random.between(-wandersPerDay, wandersPerDay);
  const sinceCalibrated = calibratedEvery === 0 ? 0 : random.between(0, calibratedEvery);
  let felt = Number.NaN;
  let lastMs = fromMs;
  return {
    shows: (atMs, value) => {
      const kept = lagS === 0 || Number.isNaN(felt) ? 0 : Math.exp(Math.min(0, lastMs - atMs) / 1000 / lagS);
      felt = kept === 0 ? value : kept * felt + (1 - kept) * value;
      lastMs = atMs;
      const days = (atMs - fromMs) / DAY_MS + sinceCalibrated;
      const wandered = calibratedEvery === 0 ? 0 : perDay * (days % calibratedEvery);
      const shown = felt + constant + wandered + (noise === 0 ? 0 : noise * random.normal());
      return inSteps(shown, step);
    },
  };
}

/** Whole steps, without the crumbs of binary fractions. */
export function inSteps(value: number, step: number): number {
  return Math.round(Math.round(value / step) * step * 1000) / 1000;
}

/** How far one reading of a healthy probe may lie from what is there, in the unit of the quantity: three times its noise, off, wandering. */
export function reachOf(quantity: SensorQuantity): number {
  const { noise, step, off, wandersPerDay, calibratedEvery } = KINDS[quantity];
  return 3 * noise + step + off + wandersPerDay * calibratedEvery;
}
