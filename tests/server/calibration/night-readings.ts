import type { Point } from '#core/calibration/stretch';
import { coolingCurve } from '#core/calibration/cooling-curve';
import { NO_SHIFT } from '#core/calibration/held';
import { lossInUse, lumpOf, mixedWith } from '#core/calibration/lump';
import { resolveSystem } from '#core/equipment/resolve';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import { randomOf } from '../../../seed/past/random';
import { facility } from '../../_support/build-facility';
import { system } from '../../_support/build-system';
import { airBlower, circulationPump, heater, returnPump, skimmer } from '../../_support/build-equipment';
import { entered } from '../../_support/given';

export const DAY_MS = 86_400_000;
const STEP_MS = 300_000;

/** The base facility with what is held while heat loss is fitted taken as exact, and the power of its heater read. */
export function measuredFacility(): Facility {
  const base = system();
  const exact = { heatToWater: entered(0.5) };
  const own: System = {
    ...base,
    tanks: base.tanks.map((tank) => ({ ...tank, evaporationActivity: entered(0.1) })),
    equipment: [
      heater(),
      returnPump({ ...exact, ratedW: 40 }),
      circulationPump({ ...exact, ratedW: 10 }),
      skimmer({ ...exact, ratedW: 20 }),
      airBlower({ heatToWater: entered(0), ratedW: 10 }),
      ...base.equipment.filter(({ type }) => type === 'top-off'),
    ],
    sensors: base.sensors.filter(({ equipment }) => equipment !== 'heater-2'),
  };
  return facility({ systems: [own] });
}

/** What a probe and the meter of the heater would have read, were the heat loss another than is described. */
export interface Nights {
  temperature: Point[];
  watts: Point[];
  /** W/K of all the water. */
  truth: number;
}

/**
 * @param firstMs   a midnight, UTC; each night the heater is off from 22:00 to 02:00
 * @param factor    of the heat loss that is described
 */
export function nightsOf(
  given: Facility,
  { firstMs, many, factor }: { firstMs: number; many: number; factor: number },
): Nights {
  const [own] = given.systems;
  if (!own) throw new Error('no system');
  const resolved = resolveSystem(given, own, 'nominal');
  const tanks = mixedWith(resolved, 'display');
  const truth = factor * lossInUse(tanks);
  const clockS = (atMs: number) => (atMs / 1000) % 86_400;
  const lump = lumpOf(resolved, tanks, clockS, new Map(), { fromMs: 0, toMs: 0 }, NO_SHIFT);
  const random = randomOf('calibration', 'nights');
  const nights: Nights = { temperature: [], watts: [], truth };
  for (let night = 0; night < many; night++) {
    const offMs = firstMs + night * DAY_MS + 22 * 3_600_000;
    const times = Array.from({ length: 48 }, (_, i) => offMs + i * STEP_MS);
    const warm = 25 + 0.1 * random.normal();
    nights.watts.push({ atMs: offMs - STEP_MS, value: 150 });
    for (const [i, value] of coolingCurve(lump, times)(truth, warm).entries()) {
      const atMs = times[i] ?? 0;
      nights.temperature.push({ atMs, value: Math.round((value + 0.02 * random.normal()) * 100) / 100 });
      nights.watts.push({ atMs, value: 0.3 });
    }
    nights.watts.push({ atMs: (times.at(-1) ?? 0) + STEP_MS, value: 150 });
  }
  return nights;
}
