import 'server-only';
import { database } from '../client';

/** A duty somebody has at a site, which is left open when they go. */
export type Duty =
  | { kind: 'on-site' | 'on-call'; shift: string; days: string[]; from: string; to: string }
  | { kind: 'swap-taken'; shift: string; date: string }
  | { kind: 'safeguard-off'; safeguard: string; until: string }
  | { kind: 'plan-draft' | 'plan-submitted'; equipment: string; system: string; version: number };

type Row = Duty & { accountId: string };

/**
 * What everybody who has or had a role at a site has to do there: shifts of the rota they stand in, safeguards they took
 * out of service and that are still off, plans of theirs that are not in force yet.
 *
 * @param today   the day at the site, ISO date
 * @returns       by account
 */
export async function openDuties(siteId: string, today: string): Promise<ReadonlyMap<string, Duty[]>> {
  const rows = (
    await Promise.all([shifts(siteId), swapsTaken(siteId, today), safeguardsOff(siteId, today), openPlans(siteId)])
  ).flat();
  const duties = new Map<string, Duty[]>();
  for (const { accountId, ...duty } of rows) duties.set(accountId, [...(duties.get(accountId) ?? []), duty as Duty]);
  return duties;
}

async function shifts(siteId: string): Promise<Row[]> {
  return await database().$queryRaw<Row[]>`
    SELECT m.account_id AS "accountId", s.kind, s.key AS shift, s.detail->'days' AS days,
           s.detail->>'from' AS "from", s.detail->>'to' AS "to"
      FROM membership m
      JOIN shift_person d ON d.site_id = m.site_id AND d.person_id = m.person_id
      JOIN shift s ON s.site_id = d.site_id AND s.id = d.shift_id AND s.retired_at IS NULL
     WHERE m.site_id = ${siteId}::uuid ORDER BY s.ordinal`;
}

/** Turns to come that somebody took by a swap that stands, and has not given on since. */
async function swapsTaken(siteId: string, today: string): Promise<Row[]> {
  return await database().$queryRaw<Row[]>`
    WITH taken AS (
      SELECT c.id, e.at, t.taker, t.giver, t.shift_id, t.day
        FROM rota_change c
        JOIN rota_change_event e ON e.site_id = c.site_id AND e.change_id = c.id AND e.kind = 'approved'
       CROSS JOIN LATERAL (VALUES (c.takes_id, c.person_id, c.shift_id, c.shift_date),
                                  (c.person_id, c.takes_id, c.back_shift_id, c.back_date)) AS t (taker, giver, shift_id, day)
       WHERE c.site_id = ${siteId}::uuid AND c.kind = 'swap' AND t.day >= ${today}
         AND NOT EXISTS (SELECT FROM rota_change_event x
                          WHERE x.site_id = c.site_id AND x.change_id = c.id AND x.kind = 'taken-back'))
    SELECT m.account_id AS "accountId", 'swap-taken' AS kind, s.key AS shift, k.day AS date
      FROM taken k
      JOIN membership m ON m.site_id = ${siteId}::uuid AND m.person_id = k.taker
      JOIN shift s ON s.site_id = m.site_id AND s.id = k.shift_id AND s.retired_at IS NULL
     WHERE NOT EXISTS (SELECT FROM taken l
                        WHERE l.giver = k.taker AND l.shift_id = k.shift_id AND l.day = k.day AND (l.at, l.id) > (k.at, k.id))
     ORDER BY k.day, s.ordinal`;
}

/** Who took a safeguard off stands there by name: that of the person of the rota, or of the account. */
async function safeguardsOff(siteId: string, today: string): Promise<Row[]> {
  return await database().$queryRaw<Row[]>`
    SELECT m.account_id AS "accountId", 'safeguard-off' AS kind, g.name AS safeguard, g.detail->'off'->>'until' AS until
      FROM membership m
      JOIN account a ON a.id = m.account_id
      LEFT JOIN person p ON p.site_id = m.site_id AND p.id = m.person_id
      JOIN person_name n ON n.site_id = m.site_id AND (n.id = p.name_id OR n.name = a.name)
      JOIN safeguard g ON g.site_id = m.site_id AND g.off_by_id = n.id AND g.retired_at IS NULL
     WHERE m.site_id = ${siteId}::uuid AND g.detail->'off'->>'until' >= ${today} ORDER BY g.name`;
}

/** Versions that somebody wrote and that came to nothing yet. */
async function openPlans(siteId: string): Promise<Row[]> {
  return await database().$queryRaw<Row[]>`
    SELECT m.account_id AS "accountId", e.name AS equipment, y.name AS system, v.version,
           CASE WHEN bool_or(s.status = 'submitted') THEN 'plan-submitted' ELSE 'plan-draft' END AS kind
      FROM membership m
      JOIN plan_version v ON v.site_id = m.site_id AND v.written_by = m.account_id::text
      JOIN plan_status s ON s.site_id = v.site_id AND s.equipment_id = v.equipment_id AND s.version = v.version
      JOIN equipment e ON e.site_id = v.site_id AND e.id = v.equipment_id AND e.retired_at IS NULL
      JOIN system y ON y.site_id = e.site_id AND y.id = e.system_id
     WHERE m.site_id = ${siteId}::uuid
     GROUP BY m.account_id, e.name, y.name, v.version
    HAVING bool_and(s.status IN ('draft', 'submitted')) ORDER BY e.name, v.version`;
}
