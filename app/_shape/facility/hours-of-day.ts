import { z } from 'zod';
import { hinted } from '../form/hints';

/**
 * Hours of the day, at least one, none of them twice.
 *
 * @param about   what happens at these hours, for whoever writes the file
 */
export function hoursOfDay(about: string) {
  const shape = z
    .array(z.int().gte(0).lte(23))
    .min(1)
    .refine((held) => new Set(held).size === held.length, { error: 'must not name the same hour twice' })
    .meta({ description: about, uniqueItems: true });
  return hinted(shape, { as: 'hours-of-day' });
}
