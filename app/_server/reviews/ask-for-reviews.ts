import 'server-only';
import { ENGINE_VERSION } from '#core/review/engine-version';
import { openRun } from '#data/reviews/runs';
import type { Transaction } from '#data/transaction';
import { wake } from '#data/wake';
import { dayIn } from '../local-day';

/** Name of the task that computes the reviews of a site: that of its file. */
const TASK = 'review-site';

/**
 * Has a worker compute whatever is stale of a site's reviews, once the transaction is kept. A job that is under way for the
 * same site gives way to the new one; one that still waits is not doubled.
 *
 * @param site   its id and IANA zone
 * @param at     the instant
 */
export async function askForReviews(
  tx: Transaction,
  { id, zone }: { id: string; zone: string },
  at: Date,
): Promise<void> {
  const aim = { judgedOn: dayIn(zone, at), engineVersion: ENGINE_VERSION };
  await openRun(tx, id, aim, 'waiting', at);
  await wake(tx, TASK, { site: id }, { key: `${TASK}:${id}` });
}
