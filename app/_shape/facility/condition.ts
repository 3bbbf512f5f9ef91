import type { Condition } from '#core/plans/plan';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { noun } from './noun';
import { keyOf } from './words';

const returnLostShape = noun('returnLost', 'The return gives no flow.', {
  kind: z.literal('return-lost').describe('return-lost: the return gives no flow.'),
  provedBy: z
    .enum(['flow', 'watts', 'command'])
    .describe("How that is proved: a flow sensor, the pump's watts, or only the command it was given."),
});

/** In the unit of the sensor. */
const bound = hinted(z.number(), { as: 'number-of', by: ['sensor'], via: 'sensor', difference: false });

const sensorConditionShape = noun('sensorCondition', 'A sensor reads above or below a value.', {
  kind: z.literal('sensor').describe('sensor: a sensor reads above or below a value.'),
  sensor: keyOf('sensor', 'Key of the sensor.'),
  above: bound.optional().describe("Holds above this value, in the sensor's unit."),
  below: bound.optional().describe("Holds below this value, in the sensor's unit."),
});

export const conditionShape = z.discriminatedUnion('kind', [
  returnLostShape,
  sensorConditionShape,
]) satisfies z.ZodType<Condition>;
