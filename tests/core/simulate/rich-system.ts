import type { Facility } from '#core/facility/facility';
import type { Equipment, System, Tank } from '#core/facility/system';
import { filter, plan } from '../../_support/build-equipment';
import { entered } from '../../_support/given';
import { dice, randomSite } from './random-system';

type Next = () => number;

/** A random site whose system also has some of what feeds, doses, gasses, oxidises, supplies and lags. */
export function richSite(seed: number): Facility {
  const next = dice(seed + 9000);
  const site = randomSite(seed);
  return {
    ...site,
    site: { ...site.site, mains: { oxidantMgL: entered(0.3 + 2 * next()), temperatureC: entered(6 + 12 * next()) } },
    systems: site.systems.map((one) => rich(one, next)),
  };
}

function rich(system: System, next: Next): System {
  const home = system.tanks.find(({ role }) => role === 'sump') ?? system.tanks[0];
  if (!home) throw new Error('a random system has a tank');
  const flowing = next() < 0.3;
  return {
    ...system,
    feedGPerDay: entered(1 + 30 * next()),
    ...(next() < 0.5 ? { fedAtH: [8, 17] } : {}),
    alkalinityMmolL: entered(1 + 2 * next()),
    tanks: flowing ? system.tanks.map((t) => (t === home ? withStandpipe(t, next) : t)) : system.tanks,
    equipment: [...system.equipment, ...gear(home.key, next), ...(flowing ? flow(home.key, next) : [])],
    sensors: system.sensors.map((s) =>
      s.quantity === 'temperature' && next() < 0.5 ? { ...s, lagS: entered(20 + 600 * next()) } : s,
    ),
  };
}

function withStandpipe(one: Tank, next: Next): Tank {
  return { ...one, drainAboveMm: entered(3 + 10 * next()) };
}

/** Some of what acts on what is dissolved. */
function gear(tank: string, next: Next): Equipment[] {
  const some: Equipment[] = [
    filter({ key: 'bacteria', name: 'Bacteria', tank, nitrifiesGPerDay: entered(1 + 5 * next()) }),
    bare('co2', { tank, co2GPerH: entered(0.2 + next()) }),
    bare('doser', {
      tank,
      flowLPerH: entered(0.2 + next()),
      dosesMmolPerL: entered(40 + 200 * next()),
      plan: plan({ regulation: { kind: 'hours', from: '08:00', to: '10:00', by: 'controller' } }),
    }),
    bare('ozone', { tank, ozoneGPerH: entered(0.02 + 0.2 * next()) }),
    bare('feeder', { tank, hopperG: entered(20 + 100 * next()) }),
  ];
  return some.filter(() => next() < 0.35);
}

/** Water from the mains all day, with what takes the chlorine out. */
function flow(tank: string, next: Next): Equipment[] {
  return [
    bare('supply', { tank, source: 'mains', flowLPerH: entered(5 + 60 * next()) }),
    bare('dechlorinator', { tank, removes: entered(0.9 + 0.1 * next()) }),
  ];
}

function bare(type: Equipment['type'], given: Partial<Equipment> & { tank: string }): Equipment {
  return { key: type, name: type, type, plan: plan(), ...given };
}
