import 'server-only';
import { database } from '../client';
import { type Broken, firstBroken, type KeptLink } from './first-broken';

/** Whether a record is as it was written, or the first link that is not and what is wrong with it. */
export type ChainVerdict =
  | { isWhole: true; links: number }
  | Broken
  | { isWhole: false; seq: number; wrong: 'added apart' | 'not as it was anchored' };

/** Links read at once. */
const PAGE = 1000;

/**
 * Reads the record of a site up to the last link that was added by then, and works out every seal again.
 *
 * @param siteId   the site
 */
export async function verifyChain(siteId: string): Promise<ChainVerdict> {
  const head = await database().recordHead.findUnique({ where: { siteId } });
  const last = head?.seq ?? 0;
  const broken = await firstBroken(linksUpTo(siteId, last), head);
  if (broken) return broken;
  return (await hasLinkAfter(siteId, last))
    ? { isWhole: false, seq: last + 1, wrong: 'added apart' }
    : { isWhole: true, links: last };
}

/** Links beyond the head, when the head has not moved on since: then nobody added them the proper way. */
async function hasLinkAfter(siteId: string, last: number): Promise<boolean> {
  const beyond = await database().record.count({ where: { siteId, seq: { gt: last } } });
  const now = await database().recordHead.findUnique({ where: { siteId } });
  return beyond > 0 && (now?.seq ?? 0) === last;
}

async function* linksUpTo(siteId: string, last: number): AsyncGenerator<KeptLink> {
  for (let from = 0; ; ) {
    const where = { siteId, seq: { gt: from, lte: last } };
    const rows = await database().record.findMany({ where, orderBy: { seq: 'asc' }, take: PAGE });
    for (const row of rows) yield { ...row, body: row.body as Record<string, unknown> };
    const end = rows.at(-1);
    if (!end) return;
    from = end.seq;
  }
}
