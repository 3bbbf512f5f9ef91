import 'server-only';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';

/** Name of the task that computes the studies of a site: that of its file. */
const TASK = 'study-site';

/** Has a worker compute whatever is stale of a site's studies. One that still waits is not doubled. */
export async function askForStudies(siteId: string): Promise<void> {
  await inTransaction(async (tx) => await wake(tx, TASK, { site: siteId }, { key: `${TASK}:${siteId}` }));
}
