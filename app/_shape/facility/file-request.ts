import { z } from 'zod';
import { sitePlace } from '../reviews/case-place';

const format = z.enum(['json', 'yaml'], { error: 'must be json or yaml' });

/** A facility file that somebody hands in. */
export const fileRequest = z.object({
  /** The whole file. */
  text: z.string({ error: 'must be a facility file' }),
  /** How it is written; left out, either is taken. */
  format: format.optional(),
});

/** A facility file to be imported. */
export const importRequest = fileRequest.extend({
  /** Revision of the site that the person looked at, 0 for a site that is new: with another, nothing is imported. */
  basedOn: z.coerce.number().int().gte(0).optional(),
});

/** A site to be exported. */
export const exportRequest = sitePlace.extend({ format: format.default('json') });
