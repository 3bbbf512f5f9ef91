import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { findSite, type SiteEntry } from '#data/sites';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { type StoredSite, storedSite } from '../reviews/stored-site';

/** A site whose description is looked at. */
export interface DescribedSite {
  entry: SiteEntry;
  stored: StoredSite;
  /** ISO date at the site. */
  today: string;
}

/** Finds a site for somebody who may see it; what they may not see is not found. */
export async function findDescribed(who: Who, site: string): Promise<Result<DescribedSite, Refusal>> {
  const entry = may(who, 'see', site) ? await findSite(site) : null;
  const today = entry && dayIn(entry.zone, now());
  const stored = entry && today && (await storedSite(entry, today));
  if (!(entry && stored && today)) return refused({ why: 'not-found', what: 'site' });
  return ok({ entry, stored, today });
}

/** The same for somebody who may change its description as well. */
export async function findToDescribe(who: Who, site: string): Promise<Result<DescribedSite, Refusal>> {
  const found = await findDescribed(who, site);
  return found.ok && !may(who, 'describe', site) ? refused({ why: 'not-allowed' }) : found;
}
