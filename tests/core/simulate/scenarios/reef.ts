import type { Facility } from '#core/facility/facility';
import type { Equipment, System, Tank } from '#core/facility/system';
import type { Fault } from '#core/faults/fault';
import type { Upset } from '#core/faults/upset';
import { airBlower, heater, plan, returnPump, thermostat } from '../../../_support/build-equipment';
import { facility } from '../../../_support/build-facility';
import { reservoir, sump, system, tank } from '../../../_support/build-system';
import type { Given } from '../../../_support/given';
import { onlySystem } from '../course';

/** What a test changes of the reef. */
interface Parts {
  display?: Given<Tank>;
  sump?: Given<Tank>;
  reservoir?: Given<Tank>;
  equipment?: Equipment[];
  more?: Given<System>;
}

/** The base reef with two plain heaters, return and air, and whatever else a test wants. */
export function reef({
  display = {},
  sump: below = {},
  reservoir: store = {},
  equipment = [],
  more = {},
}: Parts): Facility {
  return facility({
    systems: [
      system({
        tanks: [tank(display), sump(below), reservoir(store)],
        equipment: [
          heater({ plan: plan({ regulation: thermostat() }) }),
          heater({ key: 'heater-2', name: 'Heater 2', plan: plan({ regulation: thermostat() }) }),
          returnPump(),
          airBlower(),
          ...equipment,
        ],
        ...more,
      }),
    ],
  });
}

/** Let a failure mode of the catalogue befall the equipment of a key. */
export function befall(site: Facility, fault: Fault, key: string): (upset: Upset) => void {
  const system = onlySystem(site);
  const thing = fault.things(site, system).find((one) => one.key === key);
  if (!thing) throw new Error(`${fault.id} cannot befall ${key}`);
  return (upset) => fault.befall(upset, thing, site, system);
}

/** Equipment of a key stops for good. */
export function dead(key: string): (upset: Upset) => void {
  return (upset) => upset.health.set(key, 'dead');
}
