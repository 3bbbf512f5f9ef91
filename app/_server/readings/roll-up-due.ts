import 'server-only';
import { groupBy } from '#core/group-by';
import { RIPE_MS } from '#core/readings/roll-up';
import { inPlainTransaction } from '#data/readings/asking';
import { takeDue } from '#data/readings/due';
import { rollUp } from '#data/readings/roll-up';

/** Hours and days of one transaction: a second's work, so that whoever settles readings never waits long. */
const AT_ONCE = 500;

/**
 * Rolls up hours and days that are over, the oldest first. Several may be at it.
 *
 * @param at   the present
 * @returns    how many there were; as many as are done at once when more may be waiting
 */
export async function rollUpDue(at: Date): Promise<{ done: number; isMore: boolean }> {
  const done = await inPlainTransaction(async (asking) => {
    const due = await takeDue(asking, new Date(at.getTime() - RIPE_MS), AT_ONCE);
    for (const [siteId, ofSite] of groupBy(due, (one) => one.siteId)) await rollUp(asking, siteId, ofSite);
    return due.length;
  });
  return { done, isMore: done === AT_ONCE };
}
