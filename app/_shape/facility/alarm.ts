import { type AlarmDefinition, DERIVED } from '#core/alarms/definition';
import { PRIORITIES } from '#core/alarms/design/priority';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { amount } from './amount';
import { answeredBy } from './answered-by';
import { choiceOf } from './list';
import { fieldsOnly, noun } from './noun';
import { STATES } from './plan';
import { freeText, keyOf, keyText, nameText, seriesKey } from './words';

/** In the unit of the sensor. */
const bound = hinted(z.number(), { as: 'number-of', by: ['sensor'], via: 'sensor', difference: false });
/** In the unit of the sensor beside it, as a difference above 0. */
const apart = hinted(z.number().gt(0), { as: 'number-of', by: ['sensor'], via: 'sensor', difference: true });
/** In the unit of the sensor, as a difference. */
const back = hinted(z.number().gte(0), { as: 'number-of', by: ['on', 'sensor'], via: 'sensor', difference: true });

const watchedSensor = seriesKey(DERIVED, 'Key of the sensor.');

const sensorAlarmShape = noun('sensorAlarm', 'A sensor reads above or below a value.', {
  kind: z.literal('sensor').describe('sensor: a sensor reads above or below a value.'),
  sensor: watchedSensor,
  above: bound.optional().describe("True above this value, in the sensor's unit."),
  below: bound.optional().describe("True below this value, in the sensor's unit."),
});

const rateAlarmShape = noun('rateAlarm', 'A sensor rises or falls too fast.', {
  kind: z.literal('rate').describe('rate: a sensor rises or falls faster than so much an hour.'),
  sensor: watchedSensor,
  risesPerHour: apart.optional().describe("True when it rises by more than this in an hour, in the sensor's unit."),
  fallsPerHour: apart.optional().describe("True when it falls by more than this in an hour, in the sensor's unit."),
  overMin: amount('Min', 'Over how long the rate is taken', { least: 1, most: 1440 }),
});

const deviationAlarmShape = noun('deviationAlarm', 'Two sensors that should agree do not.', {
  kind: z.literal('deviation').describe('deviation: two sensors that should agree are too far apart.'),
  sensor: watchedSensor,
  other: seriesKey(DERIVED, 'Key of the sensor it should agree with, of the same quantity.'),
  by: apart.describe("True when they are further apart than this, in the sensor's unit."),
});

const frozenAlarmShape = noun('frozenAlarm', 'A sensor reports and what it reports does not move.', {
  kind: z.literal('frozen').describe('frozen: a sensor goes on reporting the same value.'),
  sensor: watchedSensor,
  within: hinted(z.number().gte(0), { as: 'number-of', by: ['sensor'], via: 'sensor', difference: true }).describe(
    "How far it may move and count as not moving, in the sensor's unit; 0 for exactly the same value.",
  ),
});

const wattsAlarmShape = noun('wattsAlarm', 'Equipment draws outside its watts range, or not as it is meant to run.', {
  kind: z
    .literal('watts')
    .describe('watts: equipment draws outside its watts range, or draws while it is meant to be off.'),
  equipment: keyOf('equipment', 'Key of the equipment.'),
});

const runLimitAlarmShape = noun('runLimitAlarm', 'Equipment runs too long or starts too often.', {
  kind: z.literal('run-limit').describe('run-limit: equipment runs too long at a stretch, or starts too often.'),
  equipment: keyOf('equipment', 'Key of the equipment.'),
  flow: keyOf('sensor', 'Key of a flow sensor that tells that it runs, where no watts sensor measures it.', {
    of: 'flow',
  }).optional(),
  longerThanMin: amount('Min', 'True when it runs longer than this at a stretch; or give startsPerHour').optional(),
  startsPerHour: amount('number', 'True when it starts more often than this in an hour', {
    least: 1,
    most: 60,
  }).optional(),
});

const stateOutstayedShape = noun('stateOutstayedAlarm', 'An operating state lasts too long.', {
  kind: z.literal('state-outstayed').describe('state-outstayed: an operating state lasts longer than it is meant to.'),
  state: z.enum(STATES).describe('The operating state.'),
  afterMin: amount('Min', 'How long it may last; as long as it is meant to when left out', { least: 1 }).optional(),
});

const silentAlarmShape = noun('silentAlarm', 'Nothing comes from a gateway.', {
  kind: z.literal('silent').describe('silent: nothing comes from a gateway.'),
  gateway: keyOf('gateway', 'Key of the gateway.'),
});

const silentSensorShape = noun('silentSensorAlarm', 'Nothing usable comes from a sensor.', {
  kind: z.literal('silent-sensor').describe('silent-sensor: nothing usable comes from a sensor.'),
  sensor: watchedSensor,
});

const SOURCES = [
  sensorAlarmShape,
  rateAlarmShape,
  deviationAlarmShape,
  frozenAlarmShape,
  wattsAlarmShape,
  runLimitAlarmShape,
  stateOutstayedShape,
  silentAlarmShape,
  silentSensorShape,
] as const;

const ownPriority = fieldsOnly({
  level: z.enum(PRIORITIES).describe('The priority: high, medium or low.'),
  why: freeText('Why it is not what the review proposes.'),
});

export const alarmShape = noun('alarm', 'What an alarm watches, how grave it is, and who answers it with what.', {
  key: keyText('Key of the alarm.'),
  name: nameText('Name of the alarm.'),
  on: z.discriminatedUnion('kind', SOURCES).describe('What it watches.'),
  delayS: amount('S', 'How long the condition must hold without a break'),
  deadBand: back.describe("How far back inside the limit it must come to clear, in the sensor's unit."),
  offDelayS: amount('S', 'How long it must be back inside the limit before it clears').optional(),
  priority: ownPriority.optional().describe('A priority of your own, instead of what the review proposes.'),
  latched: z
    .boolean()
    .optional()
    .describe('Whether it stays until somebody resets it, also when what it watches is back.'),
  suppressedIn: choiceOf(STATES, 'Operating states in which it is not called, since it is meant to be so then.')
    .optional()
    .describe('Operating states in which it is not called, since it is meant to be so then.'),
  cause: freeText('What brings it about.').optional(),
  consequence: freeText('What follows when nobody does anything.').optional(),
  whatToDo: freeText('What whoever answers it does, in order.').optional(),
  answeredBy: answeredBy('Who answers it:'),
  escalateAfterMin: amount('Min', 'When the second step of calls is due, while nobody acknowledges').optional(),
  safeguard: keyOf('safeguard', 'Key of the safeguard (kind alarm) that proves the way from this alarm to a person.', {
    of: 'alarm',
  }).optional(),
}) satisfies z.ZodType<AlarmDefinition>;
