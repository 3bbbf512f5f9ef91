import { z } from 'zod';
import { sitePlace } from '../reviews/case-place';

/** A field of a form that was left as it was counts as not given. */
const optional = <T extends z.ZodType>(shape: T) => z.preprocess((given) => given || undefined, shape.optional());

/** Which entries of a site's record are meant: all, or those of one kind, or of one person. */
export const recordPart = sitePlace.extend({
  kind: optional(z.string().max(80)),
  /** Account, or `local`. */
  by: optional(z.union([z.literal('local'), z.uuid()])),
});

/** One page of a site's record, newest first. */
export const recordPlace = recordPart.extend({
  /** Only entries before this number; the newest when left out. */
  before: optional(z.coerce.number().int().positive().max(2_147_483_647)),
  /** Whether each time is also told in UTC. */
  times: optional(z.literal('utc')),
});
