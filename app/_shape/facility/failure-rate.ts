import { FAULTS } from '#core/faults/catalogue';
import { FAILS_UNSEEN, type FailureRate } from '#core/facility/system';
import { z } from 'zod';
import { figure } from './figure';
import { noun } from './noun';
import { sourced } from './sourced';
import { keyText, nameText } from './words';

export const failureRateShape = noun('failureRate', 'How often one failure mode befalls one thing.', {
  key: keyText('Key of the rate.'),
  fault: z
    .enum([FAILS_UNSEEN, ...FAULTS.map(({ id }) => id)])
    .describe('Failure mode; for a safeguard, that it fails without anybody seeing it.'),
  thing: nameText('Key of what it befalls; of an RCD group its name.'),
  perYear: sourced(figure('PerYear', 'How often it happens')).describe('Times a year, with where that is from.'),
}) satisfies z.ZodType<FailureRate>;
