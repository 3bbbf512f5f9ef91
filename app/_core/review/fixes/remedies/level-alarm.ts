import { alarmedOn, fittedSensor, sumpOf, withAlarm } from '../edit';
import type { Remedy } from '../remedy';

/** mm beside the running level at which it calls. Common practice, no source. */
const BESIDE_MM = 40;
const DEAD_BAND_MM = 5;

/** A level alarm on the sump, both ways. */
export const remedy: Remedy = {
  id: 'level-alarm',
  changes: 'people',
  places: (_, system) => {
    const sump = sumpOf(system);
    if (!sump || alarmedOn(system, 'level', sump.key, 'above')) return [];
    return [{ key: sump.key, title: `A level alarm in ${sump.name}` }];
  },
  apply: (facility, system, { key }) =>
    withAlarm(facility, system, fittedSensor(system, 'level', { tank: key }), {
      key: `level-${key}`,
      above: BESIDE_MM,
      below: -BESIDE_MM,
      deadBand: DEAD_BAND_MM,
    }),
};
