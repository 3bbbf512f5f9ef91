import { z } from 'zod';
import { sitePlace } from '../reviews/case-place';

/** An address for one's own calendar is asked for. */
export const feedRequest = sitePlace.extend({
  scope: z.enum(['mine', 'everybody', 'rounds'], { error: 'choose your own shifts, everybody’s, or the rounds' }),
});

/** One is ended. */
export const feedEnd = sitePlace.extend({ feed: z.uuid() });

const WORD = /^([0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12})\.([\w-]{43})(?:\.ics)?$/;

/** What stands in the address: the id of the site, the token, and perhaps the ending of a calendar file. */
export const feedAddress = z.object({
  token: z
    .string()
    .max(120)
    .transform((word) => {
      const [, siteId = '', token = ''] = WORD.exec(word) ?? [];
      return { siteId, token };
    }),
});
