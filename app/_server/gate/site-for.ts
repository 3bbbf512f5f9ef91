import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { findSite, type SiteEntry } from '#data/sites';
import { may, type Verb } from './may';
import type { Refusal } from './refusal';
import type { Who } from './who';

/**
 * The site somebody wants to do something at. One they may not see is not found, as one that is not there.
 *
 * @param verb   what they want to do
 * @param key    of the site
 */
export async function siteFor(who: Who, verb: Verb, key: string): Promise<Result<SiteEntry, Refusal>> {
  const entry = may(who, 'see', key) ? await findSite(key) : null;
  if (!entry) return refused({ why: 'not-found', what: 'site' });
  return may(who, verb, key) ? ok(entry) : refused({ why: 'not-allowed' });
}
