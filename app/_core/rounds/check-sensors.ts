import type { Sensor, SensorQuantity, System } from '../facility/system';
import type { Check, NearestLimits } from './check';
import words from './check-words.json';
import type { Aspect } from './slot';

/** On which look each quantity is read. Water tests go together: there is no look of their own for each. */
const SEEN_ON: Record<SensorQuantity, Aspect> = {
  temperature: 'temperature',
  level: 'level',
  flow: 'equipment',
  salinity: 'salinity',
  oxygen: 'oxygen',
  leak: 'floor',
  watts: 'equipment',
  ph: 'salinity',
  'oxygen-saturation': 'oxygen',
  conductivity: 'salinity',
  redox: 'salinity',
  ammonia: 'salinity',
  nitrite: 'salinity',
  nitrate: 'salinity',
  phosphate: 'salinity',
  alkalinity: 'salinity',
  pressure: 'equipment',
  turbidity: 'salinity',
  'carbon-dioxide': 'salinity',
  oxidant: 'salinity',
};

/** The line of a sensor, when a round sees what it measures: a number, or for a leak sensor that its place is dry. */
export function sensorChecks(system: System, sensor: Sensor, sees: readonly Aspect[]): Check[] {
  if (!sees.includes(SEEN_ON[sensor.quantity])) return [];
  const line = {
    key: `${system.key}/sensor/${sensor.key}`,
    about: { noun: 'sensor', system: system.key, key: sensor.key },
    what: sensor.name,
    why: words.quantity[sensor.quantity],
  } as const;
  if (sensor.quantity === 'leak') return [{ ...line, kind: 'yes-no', what: `${sensor.name}: dry where it lies` }];
  const alarm = nearestLimits(system, sensor.key);
  return [{ ...line, kind: 'number', quantity: sensor.quantity, ...(alarm && { alarm }) }];
}

/** The limits of the alarms on a sensor that a rising and a falling value meet first. */
export function nearestLimits(system: System, sensor: string): NearestLimits | undefined {
  const on = system.alarms.map((alarm) => alarm.on).filter((source) => source.kind === 'sensor');
  const own = on.filter((source) => source.sensor === sensor);
  const aboves = own.flatMap(({ above }) => (above === undefined ? [] : [above]));
  const belows = own.flatMap(({ below }) => (below === undefined ? [] : [below]));
  if (aboves.length + belows.length === 0) return undefined;
  return {
    ...(aboves.length > 0 && { above: Math.min(...aboves) }),
    ...(belows.length > 0 && { below: Math.max(...belows) }),
  };
}
