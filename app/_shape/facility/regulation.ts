import type { Regulation, Vote } from '#core/plans/plan';
import { z } from 'zod';
import { amount } from './amount';
import { carriedOutBy } from './carried-out-by';
import { noun } from './noun';
import { keyOf, localTime } from './words';

const VOTES = ['single', 'median', 'highest', 'lowest'] as const satisfies readonly Vote[];
/** Levels may lie on either side of the running level. */
const EITHER_SIDE = { least: -20_000, most: 20_000 };
const by = carriedOutBy('Who carries it out:');

const alwaysShape = noun('always', 'Runs all the time.', {
  kind: z.literal('always').describe('always: runs all the time (pumps, air).'),
  by,
});

const neverShape = noun('never', 'Runs only when a person opens or starts it.', {
  kind: z.literal('never').describe('never: runs only when a person opens or starts it (drain and waste valves).'),
  by,
});

const thermostatShape = noun('thermostat', 'Two-point control of temperature.', {
  kind: z.literal('thermostat').describe('thermostat: two-point control of temperature.'),
  sensors: z
    .array(keyOf('sensor', 'Key of a temperature sensor.', { of: 'temperature' }))
    .min(1)
    .describe('Keys of the temperature sensors it reads.'),
  vote: z.enum(VOTES).describe('How several sensors become one value; single for one sensor.'),
  lowC: amount('C', 'A heater comes on, a chiller goes off, at this temperature'),
  highC: amount('C', 'A heater goes off, a chiller comes on, at this temperature'),
  minOnS: amount('S', 'Shortest run').optional(),
  minOffS: amount('S', 'Shortest pause').optional(),
  by,
});

const levelShape = noun('levelControl', 'Two-point control of level; runs up from lowMm to highMm.', {
  kind: z.literal('level').describe('level: two-point control of level.'),
  sensor: keyOf('sensor', 'Key of the level sensor.', { of: 'level' }),
  lowMm: amount('Mm', 'Starts at this level, relative to the running level', EITHER_SIDE),
  highMm: amount('Mm', 'Stops at this level, relative to the running level', EITHER_SIDE),
  runLimitMin: amount('Min', 'Longest single run; then it locks out until a person resets it').optional(),
  runLimitSafeguard: keyOf('safeguard', 'Key of the safeguard (kind run-limit) that proves the run limit.', {
    of: 'run-limit',
  }).optional(),
  by,
});

const hoursShape = noun('hours', 'On between two local times each day.', {
  kind: z.literal('hours').describe('hours: on between two local times each day.'),
  from: localTime('On.'),
  to: localTime('Off.'),
  by,
});

export const regulationShape = z.discriminatedUnion('kind', [
  alwaysShape,
  neverShape,
  thermostatShape,
  levelShape,
  hoursShape,
]) satisfies z.ZodType<Regulation>;
