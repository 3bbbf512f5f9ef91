import 'server-only';
import { database } from '../client';
import type { StoredLink } from './list-records';

interface Row extends Omit<StoredLink, 'hash'> {
  hash: Uint8Array;
}

/**
 * Entries of a site's record that are about one of these things, newest first: changes of its description, its plans, its
 * tests, and imports that changed or retired it.
 *
 * @param ids     of the thing and of those before it
 * @param limit   at most so many
 */
export async function thingRecords(siteId: string, ids: readonly string[], limit: number): Promise<StoredLink[]> {
  if (ids.length === 0) return [];
  const rows = await database().$queryRaw<Row[]>`
    SELECT site_id AS "siteId", seq, at, kind, body, hash FROM record
     WHERE site_id = ${siteId}::uuid
       AND (coalesce(body->>'thing', body->>'equipment', body->>'safeguard') = ANY (${ids}::text[])
            OR body->>'former' = ANY (${ids}::text[])
            OR (kind = 'facility-imported'
                AND EXISTS (SELECT FROM jsonb_path_query(body, '$.rows.*.*[*]') touched
                             WHERE touched #>> '{}' = ANY (${ids}::text[]))))
     ORDER BY seq DESC LIMIT ${limit}`;
  return rows.map(({ hash, ...row }) => ({ ...row, hash: Buffer.from(hash).toString('hex') }));
}
