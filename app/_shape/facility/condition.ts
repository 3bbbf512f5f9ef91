import type { Condition } from '#core/plans/plan';
import { z } from 'zod';
import { noun } from './noun';
import { keyText } from './words';

const returnLostShape = noun('returnLost', 'The return gives no flow.', {
  kind: z.literal('return-lost').describe('return-lost: the return gives no flow.'),
  provedBy: z
    .enum(['flow', 'watts', 'command'])
    .describe("How that is proved: a flow sensor, the pump's watts, or only the command it was given."),
});

const sensorConditionShape = noun('sensorCondition', 'A sensor reads above or below a value.', {
  kind: z.literal('sensor').describe('sensor: a sensor reads above or below a value.'),
  sensor: keyText('Key of the sensor.'),
  above: z.number().optional().describe("Holds above this value, in the sensor's unit."),
  below: z.number().optional().describe("Holds below this value, in the sensor's unit."),
});

export const conditionShape = z.discriminatedUnion('kind', [
  returnLostShape,
  sensorConditionShape,
]) satisfies z.ZodType<Condition>;
