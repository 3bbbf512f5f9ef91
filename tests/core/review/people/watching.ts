import type { Facility } from '#core/facility/facility';
import { alarm } from '../../../_support/build-system';

/** A site with alarms on both sides of every temperature: of the rota, and of somebody who is named. */
export function watching(site: Facility): Facility {
  return {
    ...site,
    systems: site.systems.map((system) => ({
      ...system,
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
