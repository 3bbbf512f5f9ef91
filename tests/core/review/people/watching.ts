import type { Facility } from '#core/facility/facility';
import { alarm } from '../../../_support/build-system';

/**
 * A site with alarms on both sides of every temperature: of the rota, and of somebody who is named. Heaters and pumps are put right
 * by Sam alone, after a spare was fetched.
 */
export function watching(site: Facility): Facility {
  return {
    ...site,
    site: { ...site.site, competences: [{ key: 'hot', name: 'Heat and pumps', types: ['heater', 'return-pump'] }] },
    people: site.people.map((one) => (one.key === 'sam' ? { ...one, competences: [{ competence: 'hot' }] } : one)),
    systems: site.systems.map((system) => ({
      ...system,
      equipment: system.equipment.map((one) => ({ ...one, spareMin: { value: 35, origin: 'entered' } })),
      alarms: [
        ...system.alarms,
        ...system.sensors
          .filter(({ quantity }) => quantity === 'temperature')
          .flatMap(({ key }) => [
            alarm({ key: `hot-${key}`, on: { kind: 'sensor', sensor: key, above: 27 } }),
            alarm({ key: `cold-${key}`, on: { kind: 'sensor', sensor: key, below: 22.5 }, answeredBy: ['robin'] }),
          ]),
      ],
    })),
  };
}
