import 'server-only';
import type { StateSpell } from '#core/alarms/condition';
import type { StateName } from '#core/facility/system';
import type { Transaction } from '../transaction';

interface Row {
  system: string;
  state: string;
  from: Date;
  ended: Date | null;
  until: Date;
  endsItself: boolean;
}

/**
 * States that systems of a site are in, or were in since an instant, as alarms see them. One that a device ends is over at
 * its end, though nobody says so.
 *
 * @param since   those that ended before are left out
 */
export async function spellsSince(tx: Transaction, siteId: string, since: Date): Promise<StateSpell[]> {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT y.key AS system, o.state, o.begun_at AS "from", NULL::timestamptz AS ended, o.until, o.ends_itself AS "endsItself"
      FROM state_open o JOIN system y ON y.site_id = o.site_id AND y.id = o.system_id
     WHERE o.site_id = ${siteId}::uuid
     UNION ALL
    SELECT y.key, b.state, b.at, e.at,
           (SELECT p.until FROM state_event p WHERE p.site_id = e.site_id AND p.run_id = e.run_id AND p.until IS NOT NULL
             ORDER BY p.at DESC, p.id DESC LIMIT 1), b.ends_itself
      FROM system y
      JOIN state_event e ON e.site_id = y.site_id AND e.system_id = y.id AND e.kind = 'ended'
                        AND e.at >= ${since.toISOString()}::timestamptz
      JOIN state_event b ON b.site_id = e.site_id AND b.id = e.run_id
     WHERE y.site_id = ${siteId}::uuid`;
  return rows.map(({ system, state, from, ended, until, endsItself }) => {
    const ends = [ended?.getTime() ?? Infinity, endsItself ? until.getTime() : Infinity];
    const toMs = Math.min(...ends);
    return {
      ...{ system, state: state as StateName, fromMs: from.getTime(), untilMs: until.getTime() },
      toMs: toMs === Infinity ? null : toMs,
    };
  });
}
