import { TAKEN_WHAT } from '#core/rounds/taken-back';
import { z } from 'zod';

/** A look, a second signature or the end of a watch of animals is taken back, with a reason. */
export const takeBackRequest = z.object({
  site: z.string(),
  what: z.enum(TAKEN_WHAT),
  about: z.uuid(),
  reason: z
    .string({ error: 'must say why' })
    .trim()
    .min(1, { error: 'must say why' })
    .max(2000, { error: 'must be 2000 letters at most' }),
});

export type TakeBackRequest = z.output<typeof takeBackRequest>;
