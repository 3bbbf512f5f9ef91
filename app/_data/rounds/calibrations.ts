import 'server-only';
import type { LastCalibration } from '#core/rounds/calibrated';
import { database } from '../client';
import type { Transaction } from '../transaction';

/**
 * What was last found of each living sensor of a site that was calibrated on a round which is signed; of what was corrected, the
 * correction. One question.
 *
 * @param zone   IANA zone of the site, in whose days it is told
 * @returns      by the key of the line
 */
export async function findCalibrations(
  siteId: string,
  zone: string,
  asker: Pick<Transaction, '$queryRaw'> = database(),
): Promise<Map<string, LastCalibration>> {
  const rows = await asker.$queryRaw<(LastCalibration & { line: string })[]>`
    SELECT l.line, to_char(l.at AT TIME ZONE ${zone}::text, 'YYYY-MM-DD') AS "on", l.fit
      FROM sensor s
      JOIN system y ON y.site_id = s.site_id AND y.id = s.system_id
      JOIN LATERAL (
        SELECT e.check_key AS line, e.at, (e.value->>'fit')::boolean AS fit
          FROM round_entry e
          JOIN round r ON r.site_id = e.site_id AND r.id = e.round_id
           AND r.sheet->'sensors'->>(y.key || '/' || s.key) = s.id::text
         WHERE e.site_id = s.site_id AND e.check_key = y.key || '/sensor/' || s.key || '/calibration'
           AND e.value->>'kind' = 'calibration'
           AND EXISTS (SELECT FROM round_signature g
                        WHERE g.site_id = e.site_id AND g.round_id = e.round_id AND g.kind = 'signed')
           AND NOT EXISTS (SELECT FROM round_entry c WHERE c.site_id = e.site_id AND c.supersedes = e.id)
         ORDER BY e.at DESC, e.id DESC LIMIT 1) l ON true
     WHERE s.site_id = ${siteId}::uuid AND s.retired_at IS NULL AND y.retired_at IS NULL`;
  return new Map(rows.map(({ line, ...last }) => [line, last]));
}
