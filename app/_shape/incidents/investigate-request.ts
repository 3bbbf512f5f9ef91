import { CAUSES, DEEDS, MARKS, PARTS, SIGNERS, SOURCES, STRENGTHS } from '#core/incidents/incident';
import { toCubicMetres } from '#core/units/volume';
import { z } from 'zod';
import { customShape } from './meter';
import { entryMeta, incidentPlace, localMinute, optional, written } from './place';

const count = z.preprocess(
  (given) => (given === undefined || given === '' ? 0 : given),
  z.coerce.number({ error: 'must be a number of animals' }).int().min(0).max(10_000_000),
);

const mark = z.object({
  ...entryMeta,
  kind: z.literal('mark'),
  mark: z.enum(MARKS),
  latest: optional(localMinute),
  source: z.enum(SOURCES),
  note: optional(written),
});

const LITRES = 1000;
const loss = z
  .object({
    ...entryMeta,
    kind: z.literal('loss'),
    units: customShape,
    group: written,
    dead: count,
    putDown: count,
    affected: count,
    missing: count,
    water: z.preprocess((given) => (given === undefined || given === '' ? 0 : given), z.coerce.number().min(0)),
    note: optional(written),
  })
  .refine(({ dead, putDown, affected, missing, water }) => dead + putDown + affected + missing + water > 0, {
    path: ['dead'],
    error: 'say how many, or how much water',
  })
  .transform(({ units, water, ...rest }) => ({
    ...rest,
    waterL: toCubicMetres(water, units === 'us' ? 'galUS' : 'L') * LITRES,
  }));

const safeguard = z.object({
  ...entryMeta,
  kind: z.literal('safeguard'),
  safeguard: z.uuid(),
  did: z.enum(DEEDS),
  evidence: written,
});

const cause = z.object({
  ...entryMeta,
  kind: z.literal('cause'),
  cause: z.enum(CAUSES),
  text: written,
  certainty: z.enum(['fact', 'opinion']),
});

const action = z
  .object({
    ...entryMeta,
    kind: z.literal('action'),
    text: written,
    owner: written,
    due: z.iso.date({ error: 'must be a day' }),
    strength: z.enum(STRENGTHS),
    cause: optional(z.uuid()),
    why: optional(written),
  })
  .refine(({ strength, why }) => strength !== 'reminder' || why !== undefined, {
    path: ['why'],
    error: 'a reminder alone seldom helps: say why nothing stronger can be done',
  });

const actionDone = z.object({ ...entryMeta, kind: z.literal('action-done'), action: z.uuid(), proof: written });

const summary = z.object({ ...entryMeta, kind: z.literal('summary'), part: z.enum(PARTS), text: written });

/** What whoever leads the investigation writes. */
export const investigateRequest = z.discriminatedUnion('kind', [
  mark,
  loss,
  safeguard,
  cause,
  action,
  actionDone,
  summary,
]);

/** An entry is taken back: it stays, and no longer counts. */
export const withdrawRequest = incidentPlace.extend({ entry: z.uuid(), supersedes: z.uuid(), reason: written });

/** An incident is signed: as what, and over which entries. */
export const signRequest = incidentPlace.extend({
  entry: z.uuid(),
  as: z.enum(SIGNERS),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  why: optional(written),
});

export type InvestigateRequest = z.output<typeof investigateRequest>;
export type WithdrawRequest = z.output<typeof withdrawRequest>;
export type SignRequest = z.output<typeof signRequest>;
