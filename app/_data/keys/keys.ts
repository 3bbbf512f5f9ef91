import 'server-only';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** Where a key went. */
export interface KeyHandedRow {
  /** What it opens, as people call it. */
  key: string;
  /** Account of whoever has it; null when it lies at a place. */
  holderId: string | null;
  place: string | null;
  at: Date;
  by: string;
}

/** Adds where a key went. */
export async function addKeyHanded(tx: Transaction, siteId: string, handed: KeyHandedRow): Promise<void> {
  await tx.keyHanded.create({ data: { siteId, id: newId(), ...handed } });
}

/** Where each key of a site went last, by its name. */
export async function keysNow(siteId: string): Promise<KeyHandedRow[]> {
  return await database().$queryRaw<KeyHandedRow[]>`
    SELECT DISTINCT ON (lower(k.key)) k.key, k.holder_id AS "holderId", k.place, k.at, k.by
      FROM key_handed k WHERE k.site_id = ${siteId}::uuid ORDER BY lower(k.key), k.at DESC, k.id DESC`;
}
