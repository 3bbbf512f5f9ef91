import { fittedSensor, withAlarm } from '../edit';
import type { Remedy } from '../remedy';

/** A leak sensor on the lowest floor that calls. */
export const remedy: Remedy = {
  id: 'leak-alarm',
  changes: 'people',
  places: (_, { key, sensors, alarms }) => {
    const leaks = sensors.filter(({ quantity }) => quantity === 'leak').map((s) => s.key);
    const isThere = alarms.some(
      ({ on, answeredBy }) => on.kind === 'sensor' && leaks.includes(on.sensor) && answeredBy !== 'nobody',
    );
    return isThere ? [] : [{ key, title: 'A leak alarm on the lowest floor' }];
  },
  apply: (facility, system, { key }) =>
    withAlarm(facility, system, fittedSensor(system, 'leak', {}), { key: `leak-${key}`, above: 0.5, deadBand: 0 }),
};
