import { z } from 'zod';
import { PRIORITIES } from '#core/alarms/design/priority';
import { SENSOR_QUANTITIES } from '#core/facility/system';
import { alarmShape } from '../facility/alarm';

const { key, name, on, delayS, deadBand, offDelayS, answeredBy, escalateAfterMin } = alarmShape.shape;
const { priority, latched, suppressedIn, cause, consequence, whatToDo } = alarmShape.shape;

/** Longest name of an alarm that somebody raises by hand, longest description, longest place, characters. */
export const BY_HAND = { name: 120, saw: 2000, where: 300 } as const;

const byHand = z.object({
  kind: z.literal('by-hand'),
  saw: z.string().max(BY_HAND.saw).optional(),
  where: z.string().max(BY_HAND.where).optional(),
  by: z.string(),
  round: z.uuid().optional(),
});

/**
 * What is kept with each time that an alarm is raised: its definition as it was then, with people by their ids, and the sensor
 * it was held to.
 */
export const keptDefinition = z.object({
  key,
  name,
  on: z.union([byHand, on]),
  delayS,
  deadBand,
  offDelayS,
  answeredBy,
  escalateAfterMin,
  priority,
  latched,
  suppressedIn,
  cause,
  consequence,
  whatToDo,
  /** What the review proposed then, where it said so. */
  proposed: z.enum(PRIORITIES).optional(),
  /** Id of the sensor that was held to limits, what it measures, and the limits; none for silence. */
  sensorId: z.uuid().optional(),
  quantity: z.enum(SENSOR_QUANTITIES).optional(),
  limits: z.object({ above: z.number().optional(), below: z.number().optional() }).optional(),
});

export type KeptDefinition = z.output<typeof keptDefinition>;
