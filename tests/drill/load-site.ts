import type { Facility } from '#core/facility/facility';
import { sensorsAt } from '#data/readings/sensor-names';
import { alarm, sensor } from '../_support/build-system';
import { facility, site } from '../_support/build-facility';
import { aSource } from '../_support/sources';
import { anAccount, headersOf } from '../_support/signed-in';
import { smallSystem } from '../_support/small-facility';
import { keep, stored } from '../_support/stored';

/** Sensors that send. */
export const PROBES = 10;
/** °C: as it is, and beyond the limit. */
export const USUAL_C = 25;
export const WARM_C = 28;
const LIMIT_C = 26.5;

/** What a load needs to be sent and looked at. */
export interface LoadSite {
  siteId: string;
  key: string;
  token: string;
  /** Name and id of each probe, in order. */
  probes: { name: string; id: string }[];
  /** Cookie of somebody who looks at the pages. */
  cookie: string;
}

/** A small system with ten more probes, each with an alarm that is raised by its first warm reading. */
function loadFacility(key: string): Facility {
  const system = smallSystem();
  const keys = Array.from({ length: PROBES }, (_, i) => `probe-${i}`);
  const sensors = keys.map((probe) => sensor({ key: probe, name: `Probe ${probe}`, tank: 'display' }));
  const alarms = keys.map((probe) =>
    alarm({
      key: `${probe}-warm`,
      name: `${probe} too warm`,
      on: { kind: 'sensor', sensor: probe, above: LIMIT_C },
      delayS: 0,
      deadBand: 0.5,
      safeguard: undefined,
    }),
  );
  return facility({
    site: site({ key, name: 'Load' }),
    systems: [{ ...system, sensors: [...system.sensors, ...sensors], alarms }],
  });
}

/** Describes the site, makes a source of its readings, and signs somebody in who looks on. */
export async function makeLoadSite(key: string): Promise<LoadSite> {
  await keep(loadFacility(key));
  const { siteId } = await stored(key);
  const sensors = await sensorsAt(siteId);
  const probes = sensors.filter((one) => one.key.startsWith('probe-'));
  const { token } = await aSource(siteId);
  const headers = await headersOf(await anAccount({ everywhere: 'admin' }));
  return {
    siteId,
    key,
    token,
    probes: probes.map(({ id, system, key: probe }) => ({ id, name: `${system}/${probe}` })),
    cookie: headers.get('cookie') ?? '',
  };
}
