import 'server-only';
import type { SystemReview } from '#core/review/result';
import { findReview } from '#data/reviews/results';
import { isCurrent } from './review-state';
import type { StoredSite } from './stored-site';

/** The stored review of a system, if it says what its inputs say now. @param key of the system */
export async function currentReview(siteId: string, stored: StoredSite, key: string): Promise<SystemReview | null> {
  const systemId = stored.systemIds.get(key);
  const held = systemId === undefined ? null : await findReview(siteId, systemId);
  return held && isCurrent(held, stored.hashes.get(key)) ? held.review : null;
}
