import 'server-only';
import type { Transaction } from '#data/transaction';
import { wake } from '#data/wake';

/**
 * Asks for somebody to be told. The job is only a wake-up: whether and when, say the call and its attempts, and a job that
 * was lost is asked for again.
 *
 * @param runAt   not before this instant
 */
export async function wakeCall(
  tx: Pick<Transaction, '$executeRaw'>,
  { siteId, id }: { siteId: string; id: string },
  runAt?: Date,
): Promise<void> {
  const key = `alarm-call ${id}`;
  await wake(tx, 'make-call', { site: siteId, call: id }, { key, maxAttempts: 1, ...(runAt ? { runAt } : {}) });
}
