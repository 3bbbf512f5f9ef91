import { z } from 'zod';
import {
  DATE_ORDERS,
  DELIMITERS,
  ENCODINGS,
  type FileLayout,
  FLAG_MEANINGS,
  type LayoutDraft,
  ZEROS,
} from '#core/readings/file/layout';
import { isFixed } from '#core/readings/file/instants';
import { wallClock } from '#core/time/zone';

/** Columns of a file that are looked at. */
export const MOST_COLUMNS = 400;

const place = z
  .number({ error: 'must be the place of a column' })
  .int()
  .gte(0)
  .lt(MOST_COLUMNS, { error: `must be one of the first ${MOST_COLUMNS} columns` });
const word = z.string().max(200, { error: 'must be 200 characters at most' });
const order = z.enum(DATE_ORDERS, { error: 'must be one of the orders of a date' });
const zone = z.string().refine(isZone, { error: 'must be a zone, such as Europe/London or +01:00' });
const midnight = z.enum(['real', 'unknown'], { error: 'must be real or unknown' });
const zero = z.enum(ZEROS, { error: 'must be real, missing or below' });
const flags = z.record(word, z.enum(FLAG_MEANINGS, { error: 'must be good, suspect, bad or below' }));
const goodFrom = z.number({ error: 'must be a number' });

const time = z.discriminatedUnion(
  'as',
  [
    z.object({ as: z.literal('text'), date: place, clock: place.optional(), order: order.nullable() }),
    z.object({ as: z.literal('epoch'), column: place, unit: z.enum(['s', 'ms']) }),
    z.object({ as: z.literal('parts'), columns: z.array(place).min(3).max(6) }),
  ],
  { error: 'must say where the time stands' },
);

const common = {
  encoding: z.enum(ENCODINGS, { error: 'must be a known encoding' }),
  delimiter: z.enum(DELIMITERS, { error: 'must be a known delimiter' }),
  head: z.array(word).max(MOST_COLUMNS),
  hasUnitsRow: z.boolean(),
  decimal: z.enum(['.', ','], { error: 'must be a point or a comma' }),
  time,
  missing: z.array(word).max(50, { error: 'must be 50 words at most' }),
  flags,
};

/** A layout as it is remembered. */
export const fileLayoutShape = z.object({
  ...common,
  zone,
  midnight,
  columns: z
    .array(z.object({ place, sensor: z.uuid(), unit: word, zero, flag: place.optional() }))
    .min(1)
    .max(MOST_COLUMNS),
  goodFrom: goodFrom.optional(),
}) satisfies z.ZodType<FileLayout>;

/** A layout as far as somebody has said it. A sensor is meant by its id, or by `SYSTEM/SENSOR` in keys. */
export const layoutDraftShape = z.object({
  ...common,
  zone: zone.nullable(),
  midnight: midnight.nullable(),
  columns: z
    .array(
      z.object({
        place,
        sensor: word.nullable(),
        unit: word.nullable(),
        zero: zero.nullable(),
        flag: place.nullable(),
      }),
    )
    .max(MOST_COLUMNS),
  goodFrom: goodFrom.nullable(),
}) satisfies z.ZodType<LayoutDraft>;

function isZone(text: string): boolean {
  if (isFixed(text)) return true;
  try {
    wallClock(text, 0);
    return true;
  } catch {
    return false;
  }
}
