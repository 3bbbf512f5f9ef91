import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Plan, Regulation } from '#core/plans/plan';
import { airBlower, heater } from './build-equipment';
import { facility } from './build-facility';
import { sensor, stock, system, tank } from './build-system';

function plainPlan(regulation: Regulation): Plan {
  return { cutOuts: [], interlocks: [], states: [], regulation };
}

/** One tank of three fish with a heater and air: a dozen fault cases, judged in less than a second. */
export function smallSystem(key = 'tank-1', name = 'Tank 1'): System {
  const noReturn = { drainDownMm: undefined, outletMm: undefined, returnShare: undefined };
  const sensors = ['display-temperature'];
  return system({
    key,
    name,
    stock: [stock({ count: 3 })],
    tanks: [tank({ ...noReturn, siphonBreakMm: undefined, siphonSafeguard: undefined })],
    equipment: [
      heater({
        tank: 'display',
        plan: plainPlan({ kind: 'thermostat', sensors, vote: 'single', lowC: 24.5, highC: 25.5, by: 'controller' }),
      }),
      airBlower({
        tank: 'display',
        stones: [{ tank: 'display', count: 2 }],
        plan: plainPlan({ kind: 'always', by: 'controller' }),
      }),
    ],
    sensors: [sensor({ key: 'display-temperature', name: 'Display temperature', tank: 'display' })],
    alarms: [],
    safeguards: [],
    states: [],
  });
}

/** The base site with small systems alone. */
export function smallFacility(...systems: System[]): Facility {
  return facility({ systems: systems.length > 0 ? systems : [smallSystem()] });
}
