import { z } from 'zod';
import { DELIMITERS, ENCODINGS } from '#core/readings/file/layout';
import { sitePlace } from '../reviews/case-place';
import { layoutDraftShape } from './file-layout';

/** Bytes of a file that are taken. */
const LARGEST_FILE = 20 * 1024 * 1024;

/** A file that was chosen, with its bytes as they are; or a text that was pasted. */
const chosen = z
  .union(
    [
      z.object({ name: z.string(), bytes: z.instanceof(Uint8Array) }),
      z.string().transform((text) => ({ name: 'pasted', bytes: new TextEncoder().encode(text) })),
    ],
    { error: 'must be the file of a logger' },
  )
  .refine(({ bytes }) => bytes.length > 0, { error: 'must hold something' })
  .refine(({ bytes }) => bytes.length <= LARGEST_FILE, { error: 'must be 20 MB at most: cut it in parts' })
  .transform(({ name, bytes }) => ({ name: name.slice(-200), bytes }));

/** A layout as a form sends it: as JSON. */
const draft = z
  .string({ error: 'must be a layout' })
  .transform((text, context) => {
    try {
      return JSON.parse(text) as unknown;
    } catch {
      context.addIssue({ code: 'custom', message: 'must be a layout as JSON' });
      return z.NEVER;
    }
  })
  .pipe(layoutDraftShape);

/** A file that somebody wants to look at, with what they have said of it. */
export const lookRequest = sitePlace.extend({
  file: chosen,
  /** How it is written, when it is not to be found out. */
  encoding: z.enum(ENCODINGS, { error: 'must be a known encoding' }).optional(),
  delimiter: z.enum(DELIMITERS, { error: 'must be a known delimiter' }).optional(),
  /** A remembered layout to read it by. */
  layout: z.uuid({ error: 'must be a layout' }).optional(),
  draft: draft.optional(),
});

/** A file that is to be taken in by a layout, which is remembered by its name. */
export const takeInRequest = sitePlace.extend({
  file: chosen,
  draft,
  name: z
    .string({ error: 'must be a name by which the layout is found again' })
    .trim()
    .min(1, { error: 'must be a name by which the layout is found again' })
    .max(80, { error: 'must be 80 characters at most' }),
});
