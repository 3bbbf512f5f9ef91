import type { Figure } from '#core/facility/figure';
import type { z } from 'zod';

/** The same figure, which may not be given without where it is from: nobody can check it otherwise. */
export function sourced<T extends z.ZodType<Figure>>(shape: T): T {
  return shape.refine(({ value, source }) => value === null || source !== undefined, {
    path: ['source'],
    error: 'is missing: a figure like this counts only with where it is from',
  });
}
