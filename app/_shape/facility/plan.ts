import { OPERATING_STATES, type StateName } from '#core/facility/system';
import type { Plan } from '#core/plans/plan';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { carriedOutBy } from './carried-out-by';
import { conditionShape } from './condition';
import { listOf } from './list';
import { noun } from './noun';
import { regulationShape } from './regulation';
import { freeText, keyOf } from './words';

/** States a line can speak of: all but the base state, for which regulation is written. */
export const STATES = OPERATING_STATES.filter((state): state is Exclude<StateName, 'normal'> => state !== 'normal');

const LEVEL_OR_TEMPERATURE = 'In °C, or mm relative to the running level.';
const by = carriedOutBy('Who carries it out:');
const then = z.enum(['off', 'on']).describe('What the equipment then is: off or on.');

/** In the unit of what the probe measures. */
const bound = hinted(z.number().gte(-20_000).lte(20_000), {
  as: 'number-of',
  by: ['quantity'],
  via: 'probe',
  difference: false,
});

const cutOutShape = noun('cutOut', 'Hard-wired contact with a probe of its own, in series with everything else.', {
  quantity: z.enum(['temperature', 'level']).describe('What its own probe measures.'),
  tank: keyOf('tank', 'Key of the tank its own probe sits in.'),
  above: bound.optional().describe(`Opens above this value. ${LEVEL_OR_TEMPERATURE}`),
  below: bound.optional().describe(`Opens below this value. ${LEVEL_OR_TEMPERATURE}`),
  reset: z.enum(['manual', 'automatic']).describe('Whether a person must reset it.'),
  safeguard: keyOf('safeguard', 'Key of the safeguard (kind cut-out) that proves it.', { of: 'cut-out' }),
});

const interlockShape = noun('interlock', 'Off (or on) while a condition holds.', {
  when: conditionShape.describe('The condition.'),
  then,
  by,
  safeguard: keyOf('safeguard', 'Key of the safeguard (kind interlock) that proves it.', {
    of: 'interlock',
  }).optional(),
});

const lostSensingShape = noun(
  'lostSensing',
  'What the equipment does when its regulating sensor gives nothing usable.',
  {
    action: z.enum(['off', 'on', 'hold']).describe('off, on, or hold what it was.'),
    by,
  },
);

const stateLineShape = noun('stateLine', 'What an operating state asks of the equipment.', {
  state: z.enum(STATES).describe('The operating state.'),
  then,
  by,
});

const ownWordShape = noun('ownWord', 'Put into force by the one who wrote it, while nobody else at the site may.', {
  why: freeText('Why it could not wait for somebody else.'),
});

export const planShape = noun('plan', 'How a piece of equipment is meant to behave, highest authority first.', {
  cutOuts: listOf(cutOutShape, 'Hard-wired cut-outs.'),
  interlocks: listOf(interlockShape, 'Safety interlocks.'),
  lostSensing: lostSensingShape.optional().describe('Action on lost sensing.'),
  states: listOf(stateLineShape, 'What each operating state asks of it.'),
  regulation: regulationShape.describe('What it does when nothing above it speaks.'),
  ownWord: ownWordShape
    .optional()
    .describe('In force on the word of its author alone. Absent when somebody else agreed.'),
}) satisfies z.ZodType<Plan>;
