import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import type { Transaction } from '../transaction';
import type { Called } from './identity';
import { NOUNS } from './nouns';

/** A thing that has, or once had, a key. */
export interface ThingRow {
  id: string;
  /** Null while it is living. */
  retiredAt: Date | null;
}

/**
 * Everything that had this key in its list, the living one first and then those before it, the latest first.
 *
 * @param called   table, system and key
 * @param asker    the transaction to ask in; the client itself when left out
 */
export async function findThings(
  siteId: string,
  { table, system, key }: Called,
  asker: Pick<Transaction, '$queryRaw'> = database(),
): Promise<ThingRow[]> {
  const isOfSystems = NOUNS[table].systemList !== undefined;
  const within = !isOfSystems
    ? Prisma.empty
    : system === null
      ? Prisma.sql`AND t.system_id IS NULL`
      : Prisma.sql`AND t.system_id IN (SELECT s.id FROM system s WHERE s.site_id = t.site_id AND s.key = ${system})`;
  return await asker.$queryRaw<ThingRow[]>`
    SELECT t.id, t.retired_at AS "retiredAt" FROM ${Prisma.raw(`"${table}"`)} t
     WHERE t.site_id = ${siteId}::uuid AND t.key = ${key} ${within}
     ORDER BY t.retired_at DESC NULLS FIRST, t.id DESC`;
}
