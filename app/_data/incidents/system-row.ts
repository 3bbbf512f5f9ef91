import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** The living system of a site with this key; null when there is none. */
export async function findSystemRow(
  siteId: string,
  key: string,
  asker: Pick<Transaction, 'system'> = database(),
): Promise<{ id: string; key: string; name: string } | null> {
  return await asker.system.findFirst({
    where: { siteId, key, retiredAt: null },
    select: { id: true, key: true, name: true },
  });
}
