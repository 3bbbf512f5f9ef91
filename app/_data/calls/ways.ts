import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';

/** A member of a site, and what ways there are to them. */
export interface MemberWays {
  account: string;
  name: string | null;
  role: Role;
  email: boolean;
  /** Browsers of theirs that take calls. */
  devices: number;
}

/** The members of a site, by name, and what ways there are to each. */
export async function waysOf(siteId: string): Promise<MemberWays[]> {
  return await database().$queryRaw<MemberWays[]>`
    SELECT a.id AS account, a.name, m.role, a.email IS NOT NULL AS email,
           (SELECT count(*)::int FROM push_device d WHERE d.account_id = a.id) AS devices
      FROM membership m JOIN account a ON a.id = m.account_id AND a.ended_at IS NULL
     WHERE m.site_id = ${siteId}::uuid AND m.ended_at IS NULL ORDER BY a.name, a.id`;
}
