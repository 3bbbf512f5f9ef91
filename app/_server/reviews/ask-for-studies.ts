import 'server-only';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';
import { env } from '../env';

/** Name of the task that computes the studies of a site: that of its file. */
const TASK = 'study-site';

/** Has a worker compute whatever is stale of a site's studies. One that still waits is not doubled; on a machine that is to do without, none. */
export async function askForStudies(siteId: string): Promise<void> {
  if (!isLookedLonger()) return;
  await inTransaction(async (tx) => await wake(tx, TASK, { site: siteId }, { key: `${TASK}:${siteId}` }));
}

/** Whether this machine looks for what single faults do not show. */
export function isLookedLonger(): boolean {
  return env().HOLDFAST_LONGER_LOOK !== 'off';
}
