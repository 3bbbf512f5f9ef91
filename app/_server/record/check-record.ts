import 'server-only';
import { anchorsOf } from '#data/records/anchors';
import { sealAt } from '#data/records/seal-at';
import { type ChainVerdict, verifyChain } from '#data/records/verify-chain';

/**
 * Works out every seal of a record again, and holds the record to the last anchor that is remembered here: whoever
 * rewrites the record and seals it anew has to change that as well, in a table whose rows are only added.
 *
 * @param siteId   the site
 */
export async function checkRecord(siteId: string): Promise<ChainVerdict> {
  const verdict = await verifyChain(siteId);
  const [last] = await anchorsOf(siteId, 1);
  if (!verdict.isWhole || !last) return verdict;
  const isHeld = (await sealAt(siteId, last.seq)) === last.seal;
  return isHeld ? verdict : { isWhole: false, seq: last.seq, wrong: 'not as it was anchored' };
}
