import { fittedSensor, withAlarm, withEquipment } from '../edit';
import type { Remedy } from '../remedy';

/** Range around the rated power that a healthy one draws. Common practice, no source. */
const [LEAST, MOST] = [0.8, 1.15];
const WATCHED = ['heater', 'chiller', 'return-pump', 'circulation-pump', 'air-blower', 'skimmer', 'filter'];

/** The power that equipment draws watched both ways, and while off. */
export const remedy: Remedy = {
  id: 'watts-alarm',
  changes: 'people',
  places: (_, { equipment, alarms, sensors }) => {
    const meters = (key: string) => sensors.filter((s) => s.equipment === key).map((s) => s.key);
    const isWatched = (key: string) =>
      alarms.some(
        ({ on, answeredBy }) =>
          answeredBy !== 'nobody' &&
          ((on.kind === 'watts' && on.equipment === key) || (on.kind === 'sensor' && meters(key).includes(on.sensor))),
      );
    return equipment
      .filter((e) => WATCHED.includes(e.type) && !isWatched(e.key))
      .map(({ key, name }) => ({ key, title: `A watts alarm on ${name}` }));
  },
  apply: (facility, system, { key }) => {
    const rated = system.equipment.find((e) => e.key === key)?.ratedW?.value;
    const range = rated ? { wattsRange: { minW: LEAST * rated, maxW: MOST * rated } } : {};
    const watched = withEquipment(facility, system, key, (e) => ({ ...e, ...(e.wattsRange ? {} : range) }));
    const same = watched.systems.find((one) => one.key === system.key) ?? system;
    const meter = fittedSensor(same, 'watts', { equipment: key });
    return withAlarm(watched, same, meter, { key: `watts-${key}`, watts: key, deadBand: 0 });
  },
};
