import { z } from 'zod';

/** One time that an alarm of a site was raised, by the parts of its address. */
export const alarmPlace = z.object({
  site: z.string(),
  occurrence: z.uuid({ error: 'must be the id of an alarm' }),
});

/** Longest note, characters. */
const NOTE = 2000;
const note = z
  .string()
  .trim()
  .max(NOTE, { error: `must be ${NOTE} characters at most` });

/** Somebody says that they saw an alarm: the very time it was raised that their page showed. */
export const acknowledgeRequest = alarmPlace.extend({
  note: note.optional(),
  /** How often it had called anew when their page was drawn: what called since is not meant. */
  again: z.coerce.number().int().min(0).optional(),
  /** The page it is said on. */
  page: z.enum(['list', 'alarm']).default('alarm'),
});

/** Somebody adds to what is known of an alarm. */
export const noteRequest = alarmPlace.extend({ note: note.min(1, { error: 'must not be blank' }) });
