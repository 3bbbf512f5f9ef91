import { EQUIPMENT_TYPES, PH_SCALES, SENSOR_QUANTITIES } from '#core/facility/system';
import { SAFEGUARD_KINDS } from '#core/plans/safeguard';
import { type Check, WATER_QUANTITIES } from '#core/rounds/check';
import { SIGNERS } from '#core/rounds/round-sheet';
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
  secondSignature: z.literal(true).optional(),
};

const range = z.object({ from: z.number().optional(), to: z.number().optional() });

const alarm = z.object({ above: z.number().optional(), below: z.number().optional() });
const test = z.object({
  on: z.string(),
  result: z.enum(['worked', 'failed']),
  by: z.string().optional(),
  steps: z.string().optional(),
  expected: z.string().optional(),
  seen: z.string().optional(),
});

const quiet = z.object({ from: z.number(), to: z.number(), why: z.string().optional() });
const option = z.object({ key: z.string(), name: z.string(), usual: z.boolean() });
const asked = z.object({
  quantity: z.enum(WATER_QUANTITIES),
  sensor: z.string().nullable(),
  alarm: alarm.optional(),
  usual: range.optional(),
});
const waterGiven = z.object({
  phScale: z.enum(PH_SCALES),
  pressureAtm: z.number(),
  salinity: z.number().optional(),
  temperature: z.number().optional(),
});

/** A line of a sheet. */
export const checkShape = z.discriminatedUnion('kind', [
  z.object({
    ...line,
    kind: z.literal('number'),
    quantity: z.enum(SENSOR_QUANTITIES),
    alarm: alarm.optional(),
    usual: range.optional(),
  }),
  z.object({ ...line, kind: z.literal('figure'), unit: z.string(), usual: range.optional() }),
  z.object({ ...line, kind: z.literal('yes-no') }),
  z.object({ ...line, kind: z.literal('choice'), options: z.array(option) }),
  z.object({ ...line, kind: z.literal('text') }),
  z.object({ ...line, kind: z.literal('photo') }),
  z.object({ ...line, kind: z.literal('head-count'), expected: z.number() }),
  z.object({ ...line, kind: z.literal('used'), perDay: range.optional() }),
  z.object({ ...line, kind: z.literal('doses'), dose: z.string().optional(), perDay: range.optional() }),
  z.object({ ...line, kind: z.literal('water-test'), asks: z.array(asked), given: waterGiven }),
  z.object({
    ...line,
    kind: z.literal('test'),
    safeguard: z.enum(SAFEGUARD_KINDS),
    everyDays: z.number(),
    last: test.nullable(),
    quiet: z.array(quiet).optional(),
  }),
  z.object({
    ...line,
    kind: z.literal('calibration'),
    quantity: z.enum(SENSOR_QUANTITIES),
    within: z.number().optional(),
    due: z.string().optional(),
    slope: z.literal(true).optional(),
  }),
]) satisfies z.ZodType<Check>;

/** A sheet as it is kept with its round, with the ids of the sensors it reads by `system/sensor`. */
export const keptSheet = z.object({
  format: z.literal(SHEET_FORMAT),
  places: z.array(
    z.object({
      name: z.string(),
      tank: z.string().optional(),
      system: z.object({ key: z.string(), name: z.string() }).nullable(),
      cleanness: z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4)]),
      checks: z.array(checkShape),
    }),
  ),
  signing: z.object({ by: z.enum(SIGNERS).optional(), second: z.literal(true).optional() }).optional(),
  sensors: z.record(z.string(), z.uuid()),
}) satisfies z.ZodType<Sheet & { sensors: Record<string, string> }>;

export type KeptSheet = z.output<typeof keptSheet>;
