import { SAFEGUARD_KINDS, type Safeguard } from '#core/plans/safeguard';
import { z } from 'zod';
import { amount } from './amount';
import { listOf } from './list';
import { figure } from './figure';
import { noun } from './noun';
import { sourced } from './sourced';
import { freeText, isoDate, keyText, nameText } from './words';

const testShape = noun('safeguardTest', 'One proof of a safeguard.', {
  on: isoDate('Day of the test.'),
  result: z.enum(['worked', 'failed']).describe('What it did.'),
  by: nameText('Who looked.').optional(),
  steps: freeText('What was done.').optional(),
  expected: freeText('What should have happened.').optional(),
  seen: freeText('What was seen.').optional(),
});

const offShape = noun('safeguardOff', 'A safeguard taken out of service.', {
  by: nameText('Who took it out of service.'),
  why: freeText('Why.'),
  since: isoDate('First day it is off.'),
  until: isoDate('Last day it is off.'),
}).refine(({ since, until }) => since <= until, { path: ['until'], error: 'must not be before since' });

export const safeguardShape = noun(
  'safeguard',
  'Anything that prevents or limits harm without depending on what failed.',
  {
    key: keyText('Key of the safeguard.'),
    name: nameText('Name of the safeguard.'),
    kind: z.enum(SAFEGUARD_KINDS).describe('What kind of safeguard it is.'),
    testEveryDays: amount('Days', 'A test counts for this long').refine(Number.isInteger, {
      error: 'must be a whole number of days',
    }),
    tests: listOf(testShape, 'Its tests.'),
    loud: z
      .boolean()
      .optional()
      .describe(
        'Whether its test is heard, so that the quiet hours of the site count for it; left out: those of the generator and of standby air are.',
      ),
    failsOnDemand: sourced(figure('share', 'Part of the times it is needed at which it fails')).optional(),
    off: offShape.optional().describe('Given while it is out of service.'),
  },
) satisfies z.ZodType<Safeguard>;
