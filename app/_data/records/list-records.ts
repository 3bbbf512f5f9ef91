import 'server-only';
import type { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Link } from './seal';

/** Which entries are meant; all of the site when nothing is said. */
export interface RecordPart {
  kind?: string;
  /** Account, or `local`. */
  by?: string;
  /** Only entries before this number. */
  before?: number;
}

/** A link as it stands in the record. */
export interface StoredLink extends Link {
  /** 64 hexadecimal digits. */
  hash: string;
}

/**
 * Entries of a site's record, newest first.
 *
 * @param part    which of them
 * @param limit   at most so many
 */
export async function listRecords(siteId: string, part: RecordPart, limit: number): Promise<StoredLink[]> {
  const rows = await database().record.findMany({ where: meant(siteId, part), orderBy: { seq: 'desc' }, take: limit });
  return rows.map(({ siteId: site, seq, at, kind, body, hash }) => ({
    siteId: site,
    seq,
    at,
    kind,
    body: body as Record<string, unknown>,
    hash: Buffer.from(hash).toString('hex'),
  }));
}

function meant(siteId: string, { kind, by, before }: RecordPart): Prisma.RecordWhereInput {
  return {
    siteId,
    ...(kind === undefined ? {} : { kind }),
    ...(by === undefined ? {} : { body: { path: ['by'], equals: by } }),
    ...(before === undefined ? {} : { seq: { lt: before } }),
  };
}

/** Where the record of a site stands: how many links, and the last seal; null before the first. */
export async function findHead(siteId: string): Promise<{ seq: number; seal: string } | null> {
  const head = await database().recordHead.findUnique({ where: { siteId } });
  return head && { seq: head.seq, seal: Buffer.from(head.hash).toString('hex') };
}

/** The kinds of entries a site's record has, and who made them: accounts, or `local`. */
export async function recordParties(siteId: string): Promise<{ kinds: string[]; by: string[] }> {
  const [kinds, by] = await Promise.all([
    database().$queryRaw<{ kind: string }[]>`
      SELECT DISTINCT kind FROM record WHERE site_id = ${siteId}::uuid ORDER BY kind`,
    database().$queryRaw<{ by: string }[]>`
      SELECT DISTINCT body->>'by' AS by FROM record WHERE site_id = ${siteId}::uuid AND body->>'by' IS NOT NULL`,
  ]);
  return { kinds: kinds.map(({ kind }) => kind), by: by.map((row) => row.by) };
}
