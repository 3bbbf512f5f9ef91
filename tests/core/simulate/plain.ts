import type { Facility } from '#core/facility/facility';
import type { System, Equipment } from '#core/facility/system';
import type { ToleranceProfile } from '#core/facility/stock';
import type { Machine } from '#core/simulate/machine';
import { heater, plan, thermostat } from '../../_support/build-equipment';
import { facility, room } from '../../_support/build-facility';
import { sensor, stock, system, tank } from '../../_support/build-system';
import { profileWith } from './course';

/** A heater of a tank without sump, on its own probe, with nothing above its thermostat. */
export function ownHeater(
  watts: number,
  band: { lowC: number; highC: number } = { lowC: 24.8, highC: 25.2 },
): Equipment {
  return heater({
    tank: 'display',
    ratedW: watts,
    plan: plan({ regulation: thermostat({ sensors: ['display-temperature'], ...band }) }),
  });
}

/** One tank of 400 L without sump, plan or equipment but what is given, and one small fish in it. */
export function aloneIn(
  roomC: number,
  equipment: Equipment[],
  profile: ToleranceProfile = profileWith(),
  more: Partial<System> = {},
): Facility {
  return facility({
    rooms: [room({ temperatureC: roomC })],
    profiles: [profile],
    systems: [
      system({
        tanks: [tank({ volumeL: 400, surfaceM2: 0.8, siphonBreakMm: undefined, siphonSafeguard: undefined })],
        equipment,
        sensors: [
          sensor({ key: 'display-temperature', tank: 'display' }),
          sensor({ key: 'display-level', quantity: 'level', tank: 'display' }),
        ],
        stock: [stock({ count: 1, eachG: 1, profile: 'exact' })],
        alarms: [],
        states: [],
        ...more,
      }),
    ],
  });
}

/** Water that neither evaporates, breathes nor meets the air: what is left is what a test asks about. */
export function sealed({ plant, stillGas }: Machine): void {
  plant.evaporationWPerPa.fill(0);
  plant.lossWPerK.fill(0);
  plant.respiration.fill(0);
  stillGas.fill(0);
}

/** How far a number lies from another, as a part of it. */
export function off(value: number, from: number): number {
  return Math.abs(value / from - 1);
}
