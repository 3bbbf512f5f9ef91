import { z } from 'zod';

const text = z.string().trim().max(2000, { error: 'must be 2000 letters at most' });
const needed = (what: string) => z.string({ error: what }).trim().min(1, { error: what }).max(500);

/** A site is handed over. `print` is the digest of what was shown: what has changed since is read again first. */
export const giveRequest = z.object({
  site: z.string(),
  entry: z.uuid(),
  print: z.string().regex(/^[\da-f]{64}$/),
  note: text.optional(),
});

/** Somebody takes it, on a session of their own. */
export const takeRequest = z.object({ site: z.string(), handover: z.uuid(), note: text.optional() });

/** Somebody takes it on the session of whoever gave it, by their own password. */
export const takeHereRequest = takeRequest.extend({
  email: z.string({ error: 'must be filled in' }).trim().min(1).max(320),
  password: z.string({ error: 'must be filled in' }).min(1).max(1000),
});

/** One handover by its address. */
export const handoverPlace = z.object({ site: z.string(), handover: z.uuid() });

/** Longest that animals are watched without being looked at anew, days. Common practice, no source. */
const LONGEST_DAYS = 31;

/** Animals are put under watch. */
export const watchAnimalRequest = z.object({
  site: z.string(),
  entry: z.uuid(),
  system: needed('choose the system'),
  what: needed('must say which animals'),
  why: needed('must say why'),
  days: z.coerce
    .number({ error: 'must be a number' })
    .int({ error: 'must be whole days' })
    .min(1, { error: 'must be 1 day at least' })
    .max(LONGEST_DAYS, { error: `must be ${LONGEST_DAYS} days at most: then look anew` }),
});

/** A watch is over. */
export const endWatchRequest = z.object({ site: z.string(), watch: z.uuid(), note: needed('must say how it went') });

export type GiveRequest = z.output<typeof giveRequest>;
export type TakeRequest = z.output<typeof takeRequest>;
export type TakeHereRequest = z.output<typeof takeHereRequest>;
export type WatchAnimalRequest = z.output<typeof watchAnimalRequest>;
export type EndWatchRequest = z.output<typeof endWatchRequest>;
