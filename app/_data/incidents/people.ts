import 'server-only';
import { database } from '../client';
import type { Transaction } from '../transaction';
import { accountNames } from '../accounts/names';

/** A person as an incident tells of them: name, and role at the site. */
export interface DoerRow {
  name: string;
  role: string | null;
}

/**
 * Those who did something, by what the record holds of them: one question for their roles and one for their names.
 *
 * @param ids   accounts, or `local`
 */
export async function doersOf(siteId: string, ids: Iterable<string>): Promise<ReadonlyMap<string, DoerRow>> {
  const wanted = [...new Set(ids)];
  const [names, roles] = await Promise.all([
    accountNames(wanted),
    database().$queryRaw<{ id: string; role: string | null }[]>`
      SELECT a.id::text AS id, coalesce(m.role, a.everywhere) AS role
        FROM account a LEFT JOIN membership m ON m.account_id = a.id AND m.site_id = ${siteId}::uuid
       WHERE a.id::text = ANY (${wanted}::text[])`,
  ]);
  const roleOf = new Map(roles.map(({ id, role }) => [id, role]));
  return new Map(wanted.map((id) => [id, { name: names.get(id) ?? id, role: roleOf.get(id) ?? null }]));
}

/** Names of everybody at a site: of its rota, and of those with an account there. */
export async function namesAt(tx: Transaction, siteId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<{ name: string }[]>`
    SELECT name FROM person_name WHERE site_id = ${siteId}::uuid AND name IS NOT NULL
    UNION SELECT a.name FROM account a JOIN membership m ON m.account_id = a.id
     WHERE m.site_id = ${siteId}::uuid AND a.name IS NOT NULL`;
  return rows.map(({ name }) => name);
}
