import { z } from 'zod';

/** The second signature is given, or what is not right is said. */
export const secondRequest = z
  .object({
    site: z.string(),
    asked: z.uuid(),
    right: z.enum(['yes', 'no'], { error: 'choose one' }),
    note: z
      .string({ error: 'must say what you saw' })
      .trim()
      .min(1, { error: 'must say what you saw' })
      .max(2000, { error: 'must be 2000 letters at most' }),
  })
  .transform(({ right, ...rest }) => ({ ...rest, isRight: right === 'yes' }));

export type SecondRequest = z.output<typeof secondRequest>;
