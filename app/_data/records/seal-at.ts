import 'server-only';
import { database } from '../client';

/**
 * The seal of one link of a site's record, as it stands there; whether it is true, `verifyChain` works out.
 *
 * @param seq   number of the link, from 1
 * @returns     64 hexadecimal digits; null when there is no such link
 */
export async function sealAt(siteId: string, seq: number): Promise<string | null> {
  const link = await database().record.findUnique({ where: { siteId_seq: { siteId, seq } }, select: { hash: true } });
  return link && Buffer.from(link.hash).toString('hex');
}
