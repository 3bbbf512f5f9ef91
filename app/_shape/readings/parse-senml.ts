import { type BodyFault, MOST_RECORDS, type ReadRecord } from '#core/readings/arrived';
import { resolveRecord, SENML_VERSION, type SenmlBase } from '#core/readings/senml';
import { ok, type Result, refused } from '#core/result';
import { z } from 'zod';
import { duplicateLabel } from './duplicate-label';
import { hasMoreRecords } from './has-more-records';

const number = z.number({ error: 'must be a number that is not endless' });
const text = z.string({ error: 'must be a text' });
/** A unit, as it may be kept beside a name that no sensor has: no database takes half of a letter, or none. */
const unit = text
  .max(40, 'must have at most 40 characters')
  .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'must have letters and signs alone');

/** Base fields of a SenML record (RFC 8428, table 1). */
const senmlBase = z.object({
  bn: text.optional(),
  bt: number.optional(),
  bu: unit.optional(),
  bv: number.optional(),
  bs: number.optional(),
  bver: z
    .int({ error: 'must be a whole number' })
    .positive({ error: 'must be above 0' })
    .max(SENML_VERSION, `must be at most ${SENML_VERSION}: a later version is not understood`)
    .optional(),
});

/** The other fields of a SenML record. */
const senmlEntry = z.object({
  n: text
    .optional()
    .describe('Name of the sensor, put behind bn: SYSTEM/SENSOR in the keys of the site, or another name.'),
  u: unit.optional().describe('Unit; of the sensor when left out.'),
  v: number.optional().describe('The value.'),
  vb: z.boolean({ error: 'must be true or false' }).optional().describe('Wet or dry, for a leak.'),
  vs: text.optional(),
  vd: text.optional(),
  s: number.optional(),
  t: number.optional().describe('Seconds since 1970, or from now when below 2^28; bt is added.'),
  ut: number.nonnegative({ error: 'must not be below 0' }).optional(),
});

/** One record; other labels are let be, unless they end in _ (RFC 8428, 4.1). */
export const senmlRecord = senmlBase.extend(senmlEntry.shape).describe('A SenML record (RFC 8428, JSON).');

const pack = z
  .array(z.record(z.string(), z.unknown(), { error: 'must be a record in { }' }), {
    error: 'must be a list of records in [ ]',
  })
  .min(1, 'must hold a record');

/**
 * Reads a SenML pack in JSON (RFC 8428).
 *
 * @param body    its text, bounded by whoever took it in
 * @param nowMs   the instant it was received
 * @returns       what each record says or what is wrong with it, in order; or why nothing of the pack can be understood
 */
export function parseSenml(body: string, nowMs: number): Result<ReadRecord[], BodyFault> {
  const tooLarge = { kind: 'too-large', field: '', why: `holds more than ${MOST_RECORDS} records` } as const;
  if (hasMoreRecords(body, MOST_RECORDS)) return refused(tooLarge);
  const parsed = parseJson(body);
  if (parsed === undefined) return malformed('', 'is not well-formed JSON');
  if (Array.isArray(parsed) && parsed.length > MOST_RECORDS) return refused(tooLarge);
  const records = pack.safeParse(parsed);
  if (!records.success) return issueAs(records.error);
  const twice = duplicateLabel(body);
  if (twice) return malformed(`[${twice.record}].${shown(twice.label)}`, 'is there twice');
  let base: SenmlBase = {};
  const read: ReadRecord[] = [];
  for (const [i, record] of records.data.entries()) {
    const labels = Object.keys(record);
    const strange = labels.find((label) => label.endsWith('_'));
    if (strange !== undefined) return malformed(`[${i}].${shown(strange)}`, 'must be understood, and is not');
    // Most records of a pack have none of these.
    if (labels.some((label) => Object.hasOwn(senmlBase.shape, label))) {
      const own = senmlBase.safeParse(record);
      if (!own.success) return issueAs(own.error, i);
      const { bver: _, ...given } = own.data;
      base = { ...base, ...given };
    }
    read.push(readRecord(base, record, nowMs));
  }
  return ok(read);
}

function readRecord(base: SenmlBase, record: Record<string, unknown>, nowMs: number): ReadRecord {
  const entry = senmlEntry.safeParse(record);
  if (entry.success) return resolveRecord(base, entry.data, nowMs);
  const [issue] = entry.error.issues;
  return refused({ field: String(issue?.path[0] ?? ''), why: issue?.message ?? '' });
}

function parseJson(body: string): unknown {
  try {
    return JSON.parse(body) as unknown;
  } catch {
    return undefined;
  }
}

function issueAs(error: z.ZodError, record?: number): Result<never, BodyFault> {
  const [issue] = error.issues;
  const [first, ...rest] = [...(record === undefined ? [] : [record]), ...(issue?.path ?? [])];
  const field =
    first === undefined ? '' : `[${String(first)}]${rest.map((part) => `.${shown(String(part))}`).join('')}`;
  return malformed(field, issue?.message ?? '');
}

function malformed(field: string, why: string): Result<never, BodyFault> {
  return refused({ kind: 'malformed', field, why });
}

/** A label as it may stand in an answer: a sender chooses it. */
function shown(label: string): string {
  return label.replaceAll(/[^\x20-\x7e]/g, '?').slice(0, 40);
}
