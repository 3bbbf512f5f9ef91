import { SOURCES, STEPS } from '#core/incidents/incident';
import { z } from 'zod';
import { customShape, readFigures } from './meter';
import { entryMeta, optional, written } from './place';

const besides = { notDone: optional(written), note: optional(written) };

const step = z.object({ ...entryMeta, kind: z.literal('step'), step: z.enum(STEPS), ...besides });

const sample = z
  .object({
    ...entryMeta,
    kind: z.literal('sample'),
    chilled: z.string().optional(),
    frozen: z.string().optional(),
    where: optional(written),
    ...besides,
  })
  .refine(({ chilled, frozen, notDone }) => Boolean(chilled || frozen || notDone), {
    path: ['chilled'],
    error: 'say which bottle was filled, or why none was',
  })
  .transform(({ chilled, frozen, ...rest }) => ({
    ...rest,
    bottles: [...(chilled ? (['chilled'] as const) : []), ...(frozen ? (['frozen'] as const) : [])],
  }));

const measurement = z
  .object({
    ...entryMeta,
    kind: z.literal('measurement'),
    units: customShape,
    where: optional(written),
    ...besides,
  })
  .catchall(z.string())
  .transform(
    ({ site, number, entry, at, supersedes, reason, kind, units, where, notDone, note, ...fields }, context) => {
      const report = (field: string, message: string) =>
        context.addIssue({ code: 'custom', path: [field], message, input: fields });
      const figures = readFigures(fields, units, report);
      if (figures.length === 0 && notDone === undefined)
        context.addIssue({ code: 'custom', path: ['figures'], message: 'no figure was typed', input: fields });
      return { site, number, entry, at, supersedes, reason, kind, where, notDone, note, figures };
    },
  );

const log = z.object({ ...entryMeta, kind: z.literal('log'), text: written, source: z.enum(SOURCES) });

/** What anybody writes who is there: first things, samples, meter readings, the log. */
export const logRequest = z.discriminatedUnion('kind', [step, sample, measurement, log]);

export type LogRequest = z.output<typeof logRequest>;
