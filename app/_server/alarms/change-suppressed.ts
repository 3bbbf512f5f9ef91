import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { holdTurn } from '#data/alarms/turn';
import { inTransaction, type Transaction } from '#data/transaction';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { type DefinedSite, definedAlarms } from './defined-alarms';
import { Doings } from './doings';

/** A site whose alarms are held while somebody changes what keeps one from calling. */
export interface HeldAlarms {
  tx: Transaction;
  siteId: string;
  site: DefinedSite;
  doings: Doings;
  at: Date;
}

/**
 * Changes what keeps an alarm from calling, while nobody judges the site: of two at once one is first, and nothing is raised
 * in between. What has to call then is called in the same transaction.
 *
 * @param work   makes the change, or refuses it
 */
export async function changeSuppressed(
  siteId: string,
  work: (held: HeldAlarms) => Promise<Result<null, Refusal>>,
): Promise<Result<null, Refusal>> {
  const at = now();
  return await inTransaction(async (tx) => {
    const revision = await holdTurn(tx, siteId);
    const site = revision === null ? null : await definedAlarms(tx, siteId, revision);
    if (!site) return refused({ why: 'not-found', what: 'site' });
    const doings = await Doings.begin(tx, siteId, site, at);
    const done = await work({ tx, siteId, site, doings, at });
    if (!done.ok) return done;
    await doings.tell();
    await doings.keep();
    return ok(null);
  });
}
