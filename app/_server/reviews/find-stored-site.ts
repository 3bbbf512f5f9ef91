import 'server-only';
import { ok, type Result, refused } from '#core/result';
import type { SiteEntry } from '#data/sites';
import { now } from '../clock';
import type { Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { type StoredSite, storedSite } from './stored-site';

/** A site as it is stored today. */
export interface SiteToday {
  entry: SiteEntry;
  stored: StoredSite;
  /** ISO date at the site. */
  today: string;
}

/**
 * Finds a site with all that is described of it, for somebody who wants to do something there. What they may not see is not
 * found.
 *
 * @param verb   what they want to do
 * @param site   its key
 */
export async function findStoredSite(who: Who, verb: Verb, site: string): Promise<Result<SiteToday, Refusal>> {
  const entry = await siteFor(who, verb, site);
  if (!entry.ok) return entry;
  const today = dayIn(entry.value.zone, now());
  const stored = await storedSite(entry.value, today);
  return stored ? ok({ entry: entry.value, stored, today }) : refused({ why: 'not-found', what: 'site' });
}
