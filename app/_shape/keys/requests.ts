import { z } from 'zod';
import { looksLikeCode } from '#core/keys/looks-like-code';

const NO_CODE = 'looks like what opens a lock without a key: never write such a thing here';

const words = (most: number) =>
  z
    .string()
    .trim()
    .max(most, { error: `must be ${most} characters at most` })
    .refine((text) => !looksLikeCode(text), { error: NO_CODE });

/** The page of a site that says who has which key. */
export const keysPlace = z.object({ site: z.string() });

/** Gives a key to somebody, or puts it back at its place. */
export const handKeyRequest = keysPlace
  .extend({
    key: words(60).min(1, { error: 'must say which key: what it opens' }),
    /** Account of whoever has it from now on. */
    holder: z.preprocess((said) => (said === '' ? undefined : said), z.uuid({ error: 'must be a person' }).optional()),
    /** Where it lies, when nobody has it. */
    place: words(80).default(''),
  })
  .refine(({ holder, place }) => (holder === undefined) !== (place === ''), {
    path: ['place'],
    error: 'must be a person who has it, or the place where it lies: one of the two',
  });
