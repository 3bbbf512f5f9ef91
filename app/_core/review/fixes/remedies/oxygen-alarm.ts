import { defaultProfile } from '../../../facility/profiles';
import { alarmedOn, fittedSensor, stocked, withAlarm } from '../edit';
import type { Remedy } from '../remedy';

/** mg/L above the limit of harm at which it calls, at least. Common practice, no source. */
const MARGIN = 1;
const DEAD_BAND = 0.2;

/** Oxygen measured where the animals are. */
export const remedy: Remedy = {
  id: 'oxygen-alarm',
  changes: 'people',
  places: (_, system) =>
    stocked(system)
      .filter(({ key }) => !alarmedOn(system, 'oxygen', key, 'below'))
      .map(({ key, name }) => ({ key, title: `An oxygen alarm in ${name}` })),
  apply: (facility, system, { key }) => {
    const limits = system.stock
      .filter((one) => one.tank === key)
      .flatMap((one) => (facility.profiles.find((p) => p.key === one.profile) ?? defaultProfile(system.kind)).limits);
    const worst = Math.max(
      0,
      ...limits.flatMap((l) => (l.quantity === 'oxygen' && l.below !== undefined ? [l.below] : [])),
    );
    const sensor = fittedSensor(system, 'oxygen', { tank: key });
    return withAlarm(facility, system, sensor, { key: `oxygen-${key}`, below: worst + MARGIN, deadBand: DEAD_BAND });
  },
};
