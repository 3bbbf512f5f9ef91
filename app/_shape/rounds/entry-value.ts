import { QUALITIES } from '#core/readings/reading';
import { WATER_QUANTITIES } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import { z } from 'zod';

const measured = z.object({ value: z.number(), quality: z.enum(QUALITIES), reason: z.string().optional() });
const point = z.object({ standard: z.number(), before: z.number(), after: z.number().nullable() });

/** What an entry holds, as it is kept. */
export const entryValue = z.discriminatedUnion('kind', [
  measured.extend({ kind: z.literal('number') }),
  z.object({ kind: z.literal('figure'), value: z.number() }),
  z.object({ kind: z.literal('yes-no'), asUsual: z.boolean() }),
  z.object({ kind: z.literal('choice'), option: z.string() }),
  z.object({ kind: z.literal('text'), text: z.string() }),
  z.object({ kind: z.literal('photo'), photos: z.array(z.uuid()) }),
  z.object({ kind: z.literal('head-count'), count: z.number().nullable() }),
  z.object({ kind: z.literal('used'), litres: z.number() }),
  z.object({ kind: z.literal('doses'), doses: z.number() }),
  z.object({ kind: z.literal('water-test'), figures: z.partialRecord(z.enum(WATER_QUANTITIES), measured) }),
  z.object({
    kind: z.literal('test'),
    result: z.enum(['worked', 'failed']),
    test: z.uuid(),
    witness: z.string().optional(),
  }),
  z.object({ kind: z.literal('calibration'), points: z.array(point), slope: z.number().nullable(), fit: z.boolean() }),
]) satisfies z.ZodType<EntryValue>;
