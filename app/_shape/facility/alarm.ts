import type { AlarmDefinition } from '#core/alarms/definition';
import { z } from 'zod';
import { amount } from './amount';
import { answeredBy } from './answered-by';
import { noun } from './noun';
import { keyText, nameText } from './words';

const sensorAlarmShape = noun('sensorAlarm', 'A sensor reads above or below a value.', {
  kind: z.literal('sensor').describe('sensor: a sensor reads above or below a value.'),
  sensor: keyText('Key of the sensor.'),
  above: z.number().optional().describe("True above this value, in the sensor's unit."),
  below: z.number().optional().describe("True below this value, in the sensor's unit."),
});

const wattsAlarmShape = noun('wattsAlarm', 'Equipment draws outside its watts range, or draws while off.', {
  kind: z.literal('watts').describe('watts: equipment draws outside its watts range, or draws while commanded off.'),
  equipment: keyText('Key of the equipment.'),
});

const silentAlarmShape = noun('silentAlarm', 'Nothing comes from a gateway.', {
  kind: z.literal('silent').describe('silent: nothing comes from a gateway.'),
  gateway: keyText('Key of the gateway.'),
});

export const alarmShape = noun('alarm', 'What an alarm watches, and who answers it.', {
  key: keyText('Key of the alarm.'),
  name: nameText('Name of the alarm.'),
  on: z.discriminatedUnion('kind', [sensorAlarmShape, wattsAlarmShape, silentAlarmShape]).describe('What it watches.'),
  delayS: amount('S', 'How long the condition must hold without a break'),
  deadBand: z.number().gte(0).describe("How far back inside the limit it must come to clear, in the sensor's unit."),
  answeredBy: answeredBy('Who answers it:'),
  safeguard: keyText('Key of the safeguard (kind alarm) that proves the way from this alarm to a person.').optional(),
}) satisfies z.ZodType<AlarmDefinition>;
