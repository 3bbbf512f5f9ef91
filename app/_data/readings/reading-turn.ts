import 'server-only';
import { pool } from '../pool';
import type { Asking } from './asking';

/** A site whose readings are settled, until the transaction ends. */
export interface ReadingTurn {
  zone: string;
  /** Revision of the site as it is, and the one by which series and limits were last put in order. */
  revision: number;
  settledBy: number;
}

/**
 * Takes the turn to settle the readings of a site, so that of several workers one does.
 *
 * @returns   `busy` when somebody else has it; null when the site is not described
 */
export async function takeReadingTurn(asking: Asking, siteId: string): Promise<ReadingTurn | 'busy' | null> {
  const [lock] = await asking('SELECT pg_try_advisory_xact_lock(hashtextextended($1, 0)) AS "isOurs"', [
    `readings ${siteId}`,
  ]);
  if (lock?.isOurs !== true) return 'busy';
  const [turn] = await asking(
    `SELECT s.zone, s.revision, coalesce(t.revision, 0) AS "settledBy" FROM site s
       LEFT JOIN reading_turn t ON t.site_id = s.id WHERE s.id = $1::uuid AND s.revision > 0`,
    [siteId],
  );
  return turn ? (turn as unknown as ReadingTurn) : null;
}

/** Notes by which revision of the site series and limits are in order. */
export async function noteReadingTurn(asking: Asking, siteId: string, revision: number): Promise<void> {
  await asking(
    `INSERT INTO reading_turn (site_id, revision) VALUES ($1::uuid, $2::int)
     ON CONFLICT (site_id) DO UPDATE SET revision = EXCLUDED.revision`,
    [siteId, revision],
  );
}

/** Sites of which readings are to be settled: something was stored, or they were described anew. */
export async function findSitesToSettle(): Promise<string[]> {
  const { rows } = await pool().query<{ id: string }>(
    `SELECT s.id FROM site s LEFT JOIN reading_turn t ON t.site_id = s.id
      WHERE s.revision > 0 AND (t.revision IS DISTINCT FROM s.revision
         OR EXISTS (SELECT FROM reading_touched d WHERE d.site_id = s.id))`,
  );
  return rows.map(({ id }) => id);
}
