import 'server-only';
import { pool } from '../pool';

/** Litres that somebody noted as used since the round before. */
export interface NotedUse {
  /** ms since 1970. */
  atMs: number;
  litres: number;
}

const USED = `
  SELECT (extract(epoch FROM e."at") * 1000)::float8 AS "atMs", (e.value->>'litres')::float8 AS litres
    FROM round_entry e
   WHERE e.site_id = $1 AND e.check_key = $2 AND e."at" >= $3 AND e."at" < $4 AND e.value->>'kind' = 'used'
     AND NOT EXISTS (SELECT FROM round_entry c WHERE c.site_id = e.site_id AND c.supersedes = e.id)
   ORDER BY e."at", e.id`;

/**
 * What was noted on one line of the sheets, of what was corrected the correction, in order of time.
 *
 * @param line   key of the line
 */
export async function usedOnRounds(siteId: string, line: string, from: Date, to: Date): Promise<NotedUse[]> {
  return (await pool().query<NotedUse>(USED, [siteId, line, from, to])).rows;
}
