import 'server-only';
import { database } from '../client';
import type { StoredLink } from './list-records';

/**
 * Entries of a site's record of some kinds after one instant and up to another, oldest first.
 *
 * @param kinds   which are meant
 * @param limit   at most so many
 */
export async function recordsBetween(
  siteId: string,
  kinds: readonly string[],
  after: Date,
  until: Date,
  limit: number,
): Promise<StoredLink[]> {
  const rows = await database().record.findMany({
    where: { siteId, kind: { in: [...kinds] }, at: { gt: after, lte: until } },
    orderBy: { seq: 'asc' },
    take: limit,
  });
  return rows.map(({ body, hash, siteId: site, seq, at, kind }) => ({
    siteId: site,
    seq,
    at,
    kind,
    body: body as Record<string, unknown>,
    hash: Buffer.from(hash).toString('hex'),
  }));
}
