import type { Sensor, SensorQuantity, System } from '#core/facility/system';
import type { Course } from './course';
import { inSteps, instrumentOf } from './instrument';
import { type Random, randomOf } from './random';
import { momentsOf, truthOf } from './truth';
import type { Habits } from './unmodelled';

/** What somebody reads off an instrument, or finds with a test kit, at a moment. */
export type HandReader = (atMs: number) => number | null;

/** Least step people write down. */
const WRITTEN: Partial<Record<SensorQuantity, number>> = {
  temperature: 0.1,
  salinity: 0.5,
  oxygen: 0.1,
  'oxygen-saturation': 1,
  ph: 0.05,
  level: 1,
  flow: 50,
  watts: 1,
};

/** What a test kit finds: a middle, how far it strays, and the days of its tide. Common practice, no source. */
interface Kit {
  mean: number;
  strays: number;
  step: number;
}

function kitOf(quantity: SensorQuantity, { kind }: System): Kit | null {
  const isReef = kind === 'reef' || kind === 'coral-farm';
  switch (quantity) {
    case 'ammonia':
      return { mean: 0.03, strays: 0.02, step: 0.01 };
    case 'nitrite':
      return { mean: 0.015, strays: 0.01, step: 0.005 };
    case 'nitrate':
      return { mean: isReef ? 2.5 : 12, strays: isReef ? 0.8 : 3, step: 0.5 };
    case 'phosphate':
      return { mean: 0.06, strays: 0.02, step: 0.01 };
    case 'alkalinity':
      return { mean: isReef ? 2.9 : 2.3, strays: 0.15, step: 0.05 };
    case 'temperature':
    case 'level':
    case 'flow':
    case 'salinity':
    case 'oxygen':
    case 'leak':
    case 'watts':
    case 'ph':
    case 'oxygen-saturation':
    case 'conductivity':
    case 'redox':
    case 'pressure':
    case 'turbidity':
    case 'carbon-dioxide':
    case 'oxidant':
      return null;
  }
}

/** Days from one water change, and so one tide of what gathers in the water, to the next. */
const TIDE_MS = 14 * 86_400_000;

/**
 * @param course   of the sensor's system
 * @returns        reads the sensor by hand, at moments in order of time; null where there is nothing to read
 */
export function handReader(
  site: string,
  course: Course,
  habits: Habits,
  sensor: Sensor,
  fromMs: number,
): HandReader | null {
  const { system } = course;
  const random = randomOf(site, system.key, sensor.key, 'hand');
  const kit = kitOf(sensor.quantity, system);
  if (kit) return kitReader(kit, random, fromMs);
  const truth = truthOf(course, sensor, habits);
  if (!truth) return null;
  const instrument = instrumentOf(sensor.quantity, random, fromMs);
  const momentAt = momentsOf(course);
  return (atMs) => {
    const moment = momentAt(atMs);
    const value = moment && truth(moment);
    return value === null ? null : inSteps(Math.max(0, instrument.shows(atMs, value)), WRITTEN[sensor.quantity] ?? 0.1);
  };
}

function kitReader({ mean, strays, step }: Kit, random: Random, fromMs: number): HandReader {
  const phase = random.next();
  return (atMs) => {
    const tide = ((atMs - fromMs) / TIDE_MS + phase) % 1;
    return Math.max(0, inSteps(mean + strays * (2 * tide - 1) + 0.3 * strays * random.normal(), step));
  };
}
