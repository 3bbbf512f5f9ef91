import { z } from 'zod';
import { draftText } from '../describe/draft';
import { sitePlace } from '../reviews/case-place';

const units = z.enum(['metric', 'us']);

/** The form that begins a system, in the person's units. */
export const startForm = sitePlace.extend({ units });

/** Answers as they were typed. */
export const startRequest = startForm.extend({ draft: draftText });

/** Answers that are to be kept. */
export const startKeep = startRequest.extend({
  /** Revision of the site the person looked at: with another, nothing is kept. */
  basedOn: z.coerce.number().int().gte(1),
});
