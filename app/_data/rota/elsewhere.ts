import 'server-only';
import { database } from '../client';

/** Somebody of a rota whose account is somebody of another rota as well. */
export interface Elsewhere {
  /** Key of the person here. */
  person: string;
  /** The other site, and the key of the person there. */
  siteId: string;
  there: string;
}

/** Who of a site's rota stands in that of another site too. One question for each site that is there. */
export async function findElsewhere(siteId: string): Promise<Elsewhere[]> {
  return await database().$queryRaw<Elsewhere[]>`
    SELECT p.key AS person, o.site_id AS "siteId", q.key AS there
      FROM membership m
      JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id AND p.retired_at IS NULL
      JOIN membership o ON o.account_id = m.account_id AND o.site_id <> m.site_id AND o.ended_at IS NULL
      JOIN person q ON q.site_id = o.site_id AND q.id = o.person_id AND q.retired_at IS NULL
     WHERE m.site_id = ${siteId}::uuid AND m.ended_at IS NULL
     ORDER BY p.ordinal, o.site_id`;
}
