import { EQUIPMENT_TYPES, SENSOR_QUANTITIES } from '#core/facility/system';
import { SAFEGUARD_KINDS } from '#core/plans/safeguard';
import { QUALITIES } from '#core/readings/reading';
import type { Check } from '#core/rounds/check';
import type { EntryValue } from '#core/rounds/entry';
import { SHEET_FORMAT, type Sheet } from '#core/rounds/sheet';
import { z } from 'zod';

const line = {
  key: z.string(),
  about: z.object({
    noun: z.enum(['site', 'system', 'tank', 'equipment', 'sensor', 'stock', 'safeguard']),
    system: z.string().nullable(),
    key: z.string(),
    type: z.enum(EQUIPMENT_TYPES).optional(),
  }),
  what: z.string(),
  why: z.string(),
};

const alarm = z.object({ above: z.number().optional(), below: z.number().optional() });
const test = z.object({
  on: z.string(),
  result: z.enum(['worked', 'failed']),
  by: z.string().optional(),
  steps: z.string().optional(),
  expected: z.string().optional(),
  seen: z.string().optional(),
});

const checkShape = z.discriminatedUnion('kind', [
  z.object({ ...line, kind: z.literal('number'), quantity: z.enum(SENSOR_QUANTITIES), alarm: alarm.optional() }),
  z.object({ ...line, kind: z.literal('yes-no') }),
  z.object({ ...line, kind: z.literal('head-count'), expected: z.number() }),
  z.object({ ...line, kind: z.literal('used') }),
  z.object({
    ...line,
    kind: z.literal('test'),
    safeguard: z.enum(SAFEGUARD_KINDS),
    everyDays: z.number(),
    last: test.nullable(),
  }),
]) satisfies z.ZodType<Check>;

/** A sheet as it is kept with its round, with the ids of the sensors it reads by `system/sensor`. */
export const keptSheet = z.object({
  format: z.literal(SHEET_FORMAT),
  places: z.array(
    z.object({
      name: z.string(),
      system: z.object({ key: z.string(), name: z.string() }).nullable(),
      cleanness: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]),
      checks: z.array(checkShape),
    }),
  ),
  sensors: z.record(z.string(), z.uuid()),
}) satisfies z.ZodType<Sheet & { sensors: Record<string, string> }>;

export type KeptSheet = z.output<typeof keptSheet>;

/** What an entry holds, as it is kept. */
export const entryValue = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('number'),
    value: z.number(),
    quality: z.enum(QUALITIES),
    reason: z.string().optional(),
  }),
  z.object({ kind: z.literal('yes-no'), asUsual: z.boolean() }),
  z.object({ kind: z.literal('head-count'), count: z.number().nullable() }),
  z.object({ kind: z.literal('used'), litres: z.number() }),
  z.object({ kind: z.literal('test'), result: z.enum(['worked', 'failed']), test: z.uuid() }),
]) satisfies z.ZodType<EntryValue>;
