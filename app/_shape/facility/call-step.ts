import { type CallStep, STEP_WHOM } from '#core/alarms/steps';
import { z } from 'zod';
import { amount } from './amount';
import { noun } from './noun';

const callStepShape = noun('callStep', 'One step of the calls for an alarm.', {
  whom: z
    .enum(STEP_WHOM)
    .describe(
      'on: whoever is on, on site and on call. everyone: whoever is on, leads and managers. When nobody is on, the last step is taken at once.',
    ),
  afterMin: amount('Min', 'From the alarm being raised, while nobody acknowledges'),
}) satisfies z.ZodType<CallStep>;

/** The steps in their order: the first at once, none before the one it follows. */
export const callStepsShape = z
  .array(callStepShape)
  .min(1)
  .max(8)
  .superRefine((steps, context) => {
    for (const [at, { afterMin }] of steps.entries()) {
      const before = steps[at - 1];
      const path = [at, 'afterMin'];
      if (!before && afterMin !== 0)
        context.addIssue({ code: 'custom', path, message: 'must be 0: the first step is at once' });
      if (before && afterMin <= before.afterMin)
        context.addIssue({ code: 'custom', path, message: 'must be later than the step before' });
    }
  });
