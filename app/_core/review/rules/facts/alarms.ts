import type { AlarmDefinition } from '../../../alarms/definition';
import type { Sensor, SensorQuantity } from '../../../facility/system';
import type { Breach, RuleContext } from '../rule';
import { strictest } from './limits';
import { figure } from './words';

/** An alarm that compares a sensor. */
export interface SensorAlarm {
  alarm: AlarmDefinition;
  sensor: Sensor;
  above?: number;
  below?: number;
}

/** Alarms of a system that compare sensors of a quantity. Whether somebody answers them is another rule's concern. */
export function alarmsOn({ system }: RuleContext, quantity: SensorQuantity): SensorAlarm[] {
  return system.alarms.flatMap((alarm) => {
    const { on } = alarm;
    if (on.kind !== 'sensor') return [];
    const sensor = system.sensors.find((one) => one.key === on.sensor);
    return sensor?.quantity === quantity ? [{ alarm, sensor, above: on.above, below: on.below }] : [];
  });
}

/** What is demanded of an alarm: the quantity, the side, and how it is said. */
export interface Demand {
  quantity: 'temperature' | 'oxygen';
  side: 'above' | 'below';
  name: string;
  unit: string;
}

/** Breach when no alarm calls before a quantity reaches the first limit of harm on a side. */
export function uncalled(context: RuleContext, { quantity, side, name, unit }: Demand): Breach[] {
  const limit = strictest(context, quantity, side);
  const set = alarmsOn(context, quantity).flatMap((one) => {
    const at = one[side];
    return at === undefined ? [] : [{ alarm: one.alarm.name, at }];
  });
  const isEarly = (at: number) => limit === null || (side === 'above' ? at < limit : at > limit);
  if (set.some(({ at }) => isEarly(at))) return [];
  const [late] = set;
  const consequence = late
    ? `The alarm ${late.alarm} calls when harm has begun, not before.`
    : 'Nobody is called before harm begins.';
  const figures = limit === null ? [] : [figure('limit of harm', limit, unit)];
  return [{ cause: name, consequence, figures: late ? [...figures, figure('alarm', late.at, unit)] : figures }];
}
