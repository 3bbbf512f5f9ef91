import type { Facility } from '#core/facility/facility';
import type { SensorQuantity, System } from '#core/facility/system';
import { sensorsAt } from '#data/readings/sensor-names';
import { alarm, sensor } from '../../_support/build-system';
import { facility, site } from '../../_support/build-facility';
import { smallSystem } from '../../_support/small-facility';
import { aSource } from '../../_support/sources';
import { keep, stored } from '../../_support/stored';

/** Systems of a site, and what each of them reads: twenty sensors, two of them from which a third series follows. */
export const SYSTEMS = 50;
const QUANTITIES: readonly SensorQuantity[] = [
  'temperature',
  'oxygen',
  'ph',
  'salinity',
  'redox',
  ...Array<SensorQuantity>(5).fill('level'),
  ...Array<SensorQuantity>(5).fill('flow'),
  ...Array<SensorQuantity>(5).fill('watts'),
];
/** What they usually read, in the facility file's units. */
export const USUAL: Partial<Record<SensorQuantity, number>> = {
  temperature: 25,
  oxygen: 7,
  ph: 8.1,
  salinity: 34,
  redox: 300,
  level: 0,
  flow: 2500,
  watts: 80,
};
/** °C: beyond the limit. */
export const WARM_C = 27.5;
const LIMIT_C = 26.5;

/** A site that is sent readings. */
export interface StrengthSite {
  siteId: string;
  key: string;
  token: string;
  /** Sensors of each system, in the order above. */
  systems: { id: string; name: string; quantity: SensorQuantity }[][];
}

/** A tank, its sensors and an alarm; no equipment and no animals, so that reviewing a thousand of them takes nothing away. */
function described(n: number): System {
  const key = `tank-${n}`;
  const base = smallSystem(key, `Tank ${n}`);
  const sensors = QUANTITIES.map((quantity, i) =>
    sensor({ key: `s-${i}`, name: `Sensor ${i}`, quantity, tank: i < 5 ? 'display' : undefined, accuracy: undefined }),
  );
  const warm = alarm({
    key: 'warm',
    name: 'Too warm',
    on: { kind: 'sensor', sensor: 's-0', above: LIMIT_C },
    delayS: 0,
    deadBand: 0.5,
    safeguard: undefined,
  });
  return { ...base, sensors, alarms: [warm], equipment: [], stock: [] };
}

/** Describes a site with its systems, and makes the source of its readings. */
export async function makeSite(n: number): Promise<StrengthSite> {
  const key = `strength-${n}`;
  const whole: Facility = facility({
    site: site({ key, name: `Strength ${n}` }),
    systems: Array.from({ length: SYSTEMS }, (_, i) => described(i)),
  });
  await keep(whole);
  const { siteId } = await stored(key);
  const { token } = await aSource(siteId);
  const sensors = await sensorsAt(siteId);
  const systems = Array.from({ length: SYSTEMS }, (_, i) =>
    sensors
      .filter(({ system }) => system === `tank-${i}`)
      .map(({ id, system, key: own, quantity }) => ({ id, name: `${system}/${own}`, quantity })),
  );
  return { siteId, key, token, systems };
}
