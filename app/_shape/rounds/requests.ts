import { z } from 'zod';

const site = z.string();
const at = { site, round: z.uuid() };

/** A line or a few, as a form sends them: with the line ends of the wire, and perhaps a character that no database takes. */
function said(most: number) {
  return z
    .string()
    .max(most)
    .transform((text) => text.replaceAll('\r\n', '\n').replaceAll('\0', '').trim())
    .refine((text) => text !== '', { error: 'must not be blank' });
}

export const siteRounds = z.object({ site });

/** A round of the timetable by its slot, or of a kept sheet by its key, and when it is due. */
export const beginRequest = z
  .object({ site, slot: z.string().optional(), sheet: z.string().optional(), due: z.iso.datetime() })
  .refine(({ slot, sheet }) => (slot === undefined) !== (sheet === undefined), {
    path: ['slot'],
    error: 'must name a slot of the timetable or a sheet, one of the two',
  });

/** A round walked besides the timetable, on the sheet of one of its slots. `entry` keeps one that is sent twice from being two. */
export const besidesRequest = z.object({ site, slot: z.string(), entry: z.uuid() });

export const roundAddress = z.object(at);

/** One place of a round, counted from 1. */
const place = z.coerce.number().int().min(1).max(10_000);

const FIGURE = 'figure.';

/** Gathers the fields of a form that are named `figure.NAME` into one. */
function gathered(given: unknown): unknown {
  if (typeof given !== 'object' || given === null) return given;
  const named = Object.entries(given).filter(([name]) => name.startsWith(FIGURE));
  if (named.length === 0) return given;
  return { ...given, figures: Object.fromEntries(named.map(([name, text]) => [name.slice(FIGURE.length), text])) };
}

/** What was typed on one line. Which fields it takes hangs on the kind of line, which the sheet knows. */
export const enterRequest = z
  .preprocess(
    gathered,
    z.object({
      ...at,
      check: z.string().max(300),
      /** Made by whoever records it: what is sent twice is kept once. */
      entry: z.uuid(),
      units: z.enum(['metric', 'us']).default('metric'),
      seen: z.enum(['usual', 'other', 'worked', 'failed']).optional(),
      number: said(40).optional(),
      /** Of lines that ask for several numbers, each by its name; a form sends them as `figure.NAME`. */
      figures: z.record(z.string().max(40), said(40)).default({}),
      option: z.string().max(80).optional(),
      text: said(2000).optional(),
      photos: z.string().max(600).optional(),
      /** Account of who saw a test as well. */
      witness: z.string().max(80).optional(),
      steps: said(2000).optional(),
      expected: said(2000).optional(),
      found: said(2000).optional(),
      note: said(2000).optional(),
      notDone: said(500).optional(),
      /** It was asked about, and is meant so. */
      sure: z.literal('yes').optional(),
      supersedes: z.uuid().optional(),
      reason: said(500).optional(),
    }),
  )
  .refine(({ supersedes, reason }) => supersedes === undefined || reason !== undefined, {
    path: ['reason'],
    error: 'must say why it is corrected',
  });

/** Every line of a place that is still blank: looked at and as usual, or not done. */
export const restRequest = z.object({ ...at, place, notDone: said(500).optional() });

export const signRequest = z.object({ ...at, note: said(2000).optional() });

export type BeginRequest = z.output<typeof beginRequest>;
export type BesidesRequest = z.output<typeof besidesRequest>;
export type RoundAddress = z.output<typeof roundAddress>;
export type EnterRequest = z.output<typeof enterRequest>;
export type RestRequest = z.output<typeof restRequest>;
export type SignRequest = z.output<typeof signRequest>;
