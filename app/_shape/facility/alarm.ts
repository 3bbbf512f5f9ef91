import type { AlarmDefinition } from '#core/alarms/definition';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { amount } from './amount';
import { answeredBy } from './answered-by';
import { noun } from './noun';
import { keyOf, keyText, nameText } from './words';

/** In the unit of the sensor. */
const bound = hinted(z.number(), { as: 'number-of', by: ['sensor'], via: 'sensor', difference: false });
/** In the unit of the sensor, as a difference. */
const back = hinted(z.number().gte(0), { as: 'number-of', by: ['on', 'sensor'], via: 'sensor', difference: true });

const sensorAlarmShape = noun('sensorAlarm', 'A sensor reads above or below a value.', {
  kind: z.literal('sensor').describe('sensor: a sensor reads above or below a value.'),
  sensor: keyOf('sensor', 'Key of the sensor.'),
  above: bound.optional().describe("True above this value, in the sensor's unit."),
  below: bound.optional().describe("True below this value, in the sensor's unit."),
});

const wattsAlarmShape = noun('wattsAlarm', 'Equipment draws outside its watts range, or draws while off.', {
  kind: z.literal('watts').describe('watts: equipment draws outside its watts range, or draws while commanded off.'),
  equipment: keyOf('equipment', 'Key of the equipment.'),
});

const silentAlarmShape = noun('silentAlarm', 'Nothing comes from a gateway.', {
  kind: z.literal('silent').describe('silent: nothing comes from a gateway.'),
  gateway: keyOf('gateway', 'Key of the gateway.'),
});

const silentSensorShape = noun('silentSensorAlarm', 'Nothing usable comes from a sensor.', {
  kind: z.literal('silent-sensor').describe('silent-sensor: nothing usable comes from a sensor.'),
  sensor: keyOf('sensor', 'Key of the sensor.'),
});

export const alarmShape = noun('alarm', 'What an alarm watches, and who answers it.', {
  key: keyText('Key of the alarm.'),
  name: nameText('Name of the alarm.'),
  on: z
    .discriminatedUnion('kind', [sensorAlarmShape, wattsAlarmShape, silentAlarmShape, silentSensorShape])
    .describe('What it watches.'),
  delayS: amount('S', 'How long the condition must hold without a break'),
  deadBand: back.describe("How far back inside the limit it must come to clear, in the sensor's unit."),
  offDelayS: amount('S', 'How long it must be back inside the limit before it clears').optional(),
  answeredBy: answeredBy('Who answers it:'),
  escalateAfterMin: amount('Min', 'When the second step of calls is due, while nobody acknowledges').optional(),
  safeguard: keyOf('safeguard', 'Key of the safeguard (kind alarm) that proves the way from this alarm to a person.', {
    of: 'alarm',
  }).optional(),
}) satisfies z.ZodType<AlarmDefinition>;
