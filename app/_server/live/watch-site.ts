import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';

/** A site that may be watched. */
export interface Watched {
  id: string;
  key: string;
  /** Account of whoever watches. */
  by: string;
}

export const watchSiteShape = z.object({ site: z.string() });

/** Lets somebody hear that something has changed at a site: that it has, not what. */
export async function watchSite(
  who: Who,
  { site }: z.output<typeof watchSiteShape>,
): Promise<Result<Watched, Refusal>> {
  const found = await siteFor(who, 'see', site);
  return found.ok ? ok({ id: found.value.id, key: found.value.key, by: who.id }) : found;
}
