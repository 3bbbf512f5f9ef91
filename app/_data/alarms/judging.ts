import 'server-only';
import { database } from '../client';

/** How far alarms are judged and people are told, of every site. */
export interface Judging {
  /** Since when the site that waits longest was not judged; null: there is no site. */
  judgedAt: Date | null;
  /** Calls that nobody has taken onward, of alarms that nobody acknowledged; and when the oldest of them was made. */
  waiting: number;
  oldestAt: Date | null;
}

/**
 * How far alarms are judged and people are told, of every site.
 *
 * @throws   when the database does not answer
 */
export async function judgingNow(): Promise<Judging> {
  const [row] = await database().$queryRaw<Judging[]>`
    SELECT (SELECT min(coalesce(t.judged_at, s.created_at)) FROM site s LEFT JOIN alarm_turn t ON t.site_id = s.id
             WHERE s.revision > 0) AS "judgedAt",
           count(c.id)::int AS waiting, min(c.made_at) AS "oldestAt"
      FROM alarm_open o JOIN alarm_call c ON c.site_id = o.site_id AND c.occurrence_id = o.occurrence_id
     WHERE NOT o.acknowledged AND NOT o.suppressed AND o.again = c.again AND NOT EXISTS (
           SELECT FROM alarm_call_try t JOIN alarm_call d ON d.site_id = t.site_id AND d.id = t.call_id
            WHERE t.site_id = c.site_id AND d.occurrence_id = c.occurrence_id AND d.account_id = c.account_id AND d.again = c.again
              AND t.result = 'taken')`;
  return row ?? { judgedAt: null, waiting: 0, oldestAt: null };
}
