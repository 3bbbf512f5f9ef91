import { defaultProfile } from '../../facility/profiles';
import type { Facility } from '../../facility/facility';
import type { System } from '../../facility/system';
import { alarmedOn, fittedSensor, stocked, withAlarm } from './edit';
import type { Remedy } from './remedy';

/** K beyond the usual band at which it calls. Common practice, no source. */
const BEYOND_K = 0.5;
const DEAD_BAND_K = 0.3;

/** An alarm on the temperature of a tank with animals, half a kelvin beyond its usual band. */
export function temperatureAlarm(id: 'high-alarm' | 'low-alarm', side: 'above' | 'below'): Remedy {
  return {
    id,
    changes: 'people',
    places: (_, system) =>
      stocked(system)
        .filter(({ key }) => !alarmedOn(system, 'temperature', key, side))
        .map(({ key, name }) => ({
          key,
          title: `A ${side === 'above' ? 'high' : 'low'} temperature alarm in ${name}`,
        })),
    apply: (facility, system, { key }) =>
      withAlarm(facility, system, fittedSensor(system, 'temperature', { tank: key }), {
        key: `${id}-${key}`,
        [side]: usual(facility, system, key)[side === 'above' ? 1 : 0] + (side === 'above' ? BEYOND_K : -BEYOND_K),
        deadBand: DEAD_BAND_K,
      }),
  };
}

/** The narrowest usual band of what lives in a tank, °C, but never narrower than what its equipment keeps. */
function usual({ profiles }: Facility, system: System, tank: string): [number, number] {
  const bands = system.stock
    .filter((one) => one.tank === tank)
    .map((one) => (profiles.find(({ key }) => key === one.profile) ?? defaultProfile(system.kind)).usual.temperatureC);
  const kept = system.equipment.flatMap(({ plan: { regulation: r } }) =>
    r.kind === 'thermostat' ? [r.lowC, r.highC] : [],
  );
  const low = Math.max(...bands.map((band) => band[0]));
  const high = Math.min(...bands.map((band) => band[1]));
  return [Math.min(low, ...kept), Math.max(high, ...kept)];
}
