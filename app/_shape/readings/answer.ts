import { LATE_MS } from '#core/readings/late';
import { QUALITIES } from '#core/readings/reading';
import { z } from 'zod';

const count = z.int().nonnegative();

const kept = z
  .object({
    result: z
      .enum(['stored', 'repeat', 'conflict', 'corrected'])
      .describe(
        'stored: it is new. repeat: it was there. conflict: another value is there for that instant, and stands. corrected: it ' +
          'supersedes what was there, which is kept too.',
      ),
    quality: z.enum(QUALITIES).describe('How far it can be trusted.'),
    reason: z.string().optional().describe('Why it is not good.'),
    late: z
      .literal(true)
      .optional()
      .describe(
        `It is stored, and came more than ${LATE_MS / 60_000} min after it was taken: it counts, and ends no alarm.`,
      ),
  })
  .describe('A record that was understood.');

const refused = z
  .object({
    result: z.literal('refused'),
    field: z.string().describe('The field that is wrong; empty for the whole record.'),
    why: z.string().describe('What is wrong with it.'),
  })
  .describe('A record that was not stored; the others were.');

/** What a source is answered when all it sent was dealt with. */
export const readingsAnswer = z.object({
  stored: count,
  repeat: count,
  conflict: count,
  corrected: count,
  refused: count,
  late: count.describe('How many of those stored came late; a repeat was settled when it first came.'),
  records: z.array(z.union([kept, refused])).describe('What became of each record, in the order they were sent.'),
});

/** What it is answered when nothing was stored. */
export const readingsRefusal = z.object({
  said: z.string().describe('Why, as a sentence.'),
  field: z.string().optional().describe('The place in the body.'),
});

export type ReadingsAnswer = z.output<typeof readingsAnswer>;
export type ReadingsRefusal = z.output<typeof readingsRefusal>;
