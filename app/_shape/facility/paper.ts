import { PAPER_KINDS, type Paper } from '#core/facility/paper';
import { z } from 'zod';
import { noun } from './noun';
import { freeText, isoDate, keyText } from './words';

export const paperShape = noun('paper', 'A dated statement of how a hazard is met that the model does not carry.', {
  key: keyText('Key of the paper.'),
  kind: z.enum(PAPER_KINDS).describe('What it is about.'),
  on: isoDate('Day on which it was so.'),
  note: freeText('Where it lies and what it says, without names.').optional(),
}) satisfies z.ZodType<Paper>;
