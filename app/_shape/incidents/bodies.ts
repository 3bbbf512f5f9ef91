import {
  type Bodies,
  CAUSES,
  DEEDS,
  type EntryKind,
  MARKS,
  PARTS,
  SIGNERS,
  SOURCES,
  STEPS,
  STRENGTHS,
} from '#core/incidents/incident';
import { SENSOR_QUANTITIES } from '#core/facility/system';
import { z } from 'zod';

/** Text that people wrote; how long it may be is said where it is written. */
const text = z.string().min(1).max(2000);
const said = text.optional();
const count = z.number().int().min(0).max(10_000_000);
const figure = z.strictObject({
  quantity: z.enum(SENSOR_QUANTITIES),
  sensor: z.uuid().optional(),
  value: z.number(),
});

/** What an entry of each kind holds, as it is kept. */
export const bodyShapes: { readonly [K in EntryKind]: z.ZodType<Bodies[K]> } = {
  step: z.strictObject({ step: z.enum(STEPS), notDone: said, note: said }),
  sample: z.strictObject({ bottles: z.array(z.enum(['chilled', 'frozen'])), where: said, notDone: said, note: said }),
  measurement: z.strictObject({ figures: z.array(figure).max(100), where: said, notDone: said, note: said }),
  log: z.strictObject({ text, source: z.enum(SOURCES) }),
  mark: z.strictObject({
    mark: z.enum(MARKS),
    latest: z.number().int().optional(),
    source: z.enum(SOURCES),
    note: said,
  }),
  loss: z.strictObject({
    group: text,
    dead: count,
    putDown: count,
    affected: count,
    missing: count,
    waterL: z.number().min(0),
    note: said,
  }),
  safeguard: z.strictObject({ safeguard: z.uuid(), did: z.enum(DEEDS), evidence: text }),
  cause: z.strictObject({ cause: z.enum(CAUSES), text, certainty: z.enum(['fact', 'opinion']) }),
  action: z.strictObject({
    text,
    owner: text,
    due: z.iso.date(),
    strength: z.enum(STRENGTHS),
    cause: z.uuid().optional(),
    why: said,
  }),
  'action-done': z.strictObject({ action: z.uuid(), proof: text }),
  summary: z.strictObject({ part: z.enum(PARTS), text }),
  signature: z.strictObject({
    as: z.enum(SIGNERS),
    covers: z.array(z.uuid()),
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
    why: said,
  }),
};

/** The body of an entry that only takes another back. */
export const WITHDRAWN = { withdrawn: true } as const;

/**
 * What is kept of an entry, read again.
 *
 * @param kind   of the entry
 * @param body   as it is kept
 * @returns      null for one that only takes another back
 * @throws       ZodError when it is no entry of this kind
 */
export function readBody<K extends EntryKind>(kind: K, body: unknown): Bodies[K] | null {
  const isWithdrawn = typeof body === 'object' && body !== null && 'withdrawn' in body;
  return isWithdrawn ? null : bodyShapes[kind].parse(body);
}
