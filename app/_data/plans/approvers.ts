import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import type { Transaction } from '../transaction';

/**
 * How many others there are at a site with one of these roles: accounts that may sign in, by their role at the site, or by
 * the one they have everywhere where the site gives them none.
 *
 * @param account   who is not counted; an account, or `local`
 * @param roles     the roles
 */
export async function countOthers(
  tx: Pick<Transaction, '$queryRaw'> = database(),
  siteId: string,
  account: string,
  roles: readonly Role[],
): Promise<number> {
  const [counted] = await tx.$queryRaw<{ others: number }[]>`
    SELECT count(*)::int AS others
      FROM account a
      LEFT JOIN membership m ON m.account_id = a.id AND m.site_id = ${siteId}::uuid AND m.ended_at IS NULL
     WHERE a.ended_at IS NULL AND a.id::text <> ${account} AND coalesce(m.role, a.everywhere) = ANY (${[...roles]}::text[])`;
  return counted?.others ?? 0;
}
