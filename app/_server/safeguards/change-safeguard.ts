import 'server-only';
import { ok, refused, type Result } from '#core/result';
import { appendRecords } from '#data/records/append-records';
import type { RecordEntry } from '#data/records/seal';
import { findSafeguard, type SafeguardRow } from '#data/safeguards/safeguard-row';
import { countRevision, holdSite } from '#data/sites';
import { inTransaction, type Transaction } from '#data/transaction';
import { SITE_ITSELF, type SafeguardPlace } from '#shape/safeguards/requests';
import { now } from '../clock';
import type { Verb } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import { siteFor } from '../gate/site-for';
import type { Who } from '../gate/who';
import { dayIn } from '../local-day';
import { askForReviews } from '../reviews/ask-for-reviews';

/** A safeguard held by a transaction, and when that is. */
export interface Held {
  tx: Transaction;
  siteId: string;
  safeguard: SafeguardRow;
  /** The instant, and its day at the site as an ISO date. */
  at: Date;
  today: string;
}

/** What changing a safeguard answers: where it is. */
export type Changed = Result<SafeguardPlace, Refusal>;

/**
 * Changes a safeguard. The change, its entries in the record, the site's next revision and the call for new reviews are
 * kept together or not at all; two who change the same site wait for one another.
 *
 * @param verb   what it takes to be allowed
 * @param work   makes the change; answers what the record gains, nothing when it had been made already
 */
export async function changeSafeguard(
  who: Who,
  verb: Verb,
  { site, system, safeguard: key }: SafeguardPlace,
  work: (held: Held) => Promise<Result<RecordEntry[], Refusal>>,
): Promise<Changed> {
  const found = await siteFor(who, verb, site);
  if (!found.ok) return found;
  const entry = found.value;
  const at = now();
  return await inTransaction(async (tx) => {
    const { id: siteId } = await holdSite(tx, entry, at);
    const safeguard = await findSafeguard(tx, siteId, system === SITE_ITSELF ? null : system, key);
    if (!safeguard) return refused({ why: 'not-found', what: 'safeguard' });
    const done = await work({ tx, siteId, safeguard, at, today: dayIn(entry.zone, at) });
    if (!done.ok) return done;
    if (done.value.length > 0) {
      await countRevision(tx, siteId);
      await appendRecords(tx, siteId, done.value, at);
      await askForReviews(tx, { id: siteId, zone: entry.zone }, at);
    }
    return ok({ site, system, safeguard: key });
  });
}
