import { z } from 'zod';

/**
 * A list that a file may leave out when it is empty.
 *
 * @param member shape of each member
 * @param about  what the list holds, for whoever writes the file
 */
export function listOf<T extends z.ZodType>(member: T, about: string) {
  return z
    .codec(z.array(member).optional(), z.custom<z.output<T>[]>(Array.isArray), {
      decode: (given) => given ?? [],
      encode: (held) => (held.length === 0 ? undefined : held),
    })
    .describe(`${about} May be left out when there are none.`);
}

/**
 * A list of different words out of a fixed set, at least one.
 *
 * @param words the set
 * @param about what the words say
 */
export function choiceOf<const W extends readonly string[]>(words: W, about: string) {
  return z
    .array(z.enum(words))
    .min(1)
    .refine((held) => new Set(held).size === held.length, { error: 'must not name the same thing twice' })
    .meta({ description: about, uniqueItems: true });
}
