import { alarmedOn, fittedSensor, sumpOf, withAlarm } from '../edit';
import type { Remedy } from '../remedy';

/** Part of the return's flow below which it calls. Common practice, no source. */
const PART = 0.4;

/** The return's flow measured, with a call when it is lost. */
export const remedy: Remedy = {
  id: 'flow-alarm',
  changes: 'people',
  places: (_, system) => {
    const sump = sumpOf(system);
    const pumped = system.equipment.some(({ type }) => type === 'return-pump');
    const isThere = system.tanks.some(({ key }) => alarmedOn(system, 'flow', key, 'below'));
    return sump && pumped && !isThere ? [{ key: sump.key, title: 'A flow alarm on the return' }] : [];
  },
  apply: (facility, system, { key }) => {
    const whole = system.equipment
      .filter(({ type }) => type === 'return-pump')
      .reduce((sum, e) => sum + (e.flowLPerH?.value ?? 0), 0);
    const sensor = fittedSensor(system, 'flow', { tank: key });
    return withAlarm(facility, system, sensor, { key: `flow-${key}`, below: PART * whole, deadBand: 0 });
  },
};
