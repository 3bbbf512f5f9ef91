import 'server-only';
import { database } from '../client';
import { NEWS_CHANNEL, saidOf } from '../news';
import type { Transaction } from '../transaction';

/** A site's turn to be judged, held until the transaction ends. */
export interface Turn {
  /** When its alarms were last judged; null: never. */
  judgedAt: Date | null;
  /** Revision of the site as it is, and by which it was last judged. */
  revision: number;
  judgedBy: number;
}

/**
 * Takes the turn to judge a site, so that of several workers one does.
 *
 * @returns   null when somebody else has it, or the site is not described
 */
export async function takeTurn(tx: Transaction, siteId: string, at: Date): Promise<Turn | null> {
  const held = await heldTurn(tx, siteId);
  if (held) return held;
  // It is somebody else's, or there is none yet.
  const made = await tx.$executeRaw`
    INSERT INTO alarm_turn (site_id, judged_at, revision) VALUES (${siteId}::uuid, ${at.toISOString()}::timestamptz, 0)
        ON CONFLICT (site_id) DO NOTHING`;
  const first = made > 0 ? await heldTurn(tx, siteId) : null;
  return first && { ...first, judgedAt: null };
}

async function heldTurn(tx: Transaction, siteId: string): Promise<Turn | null> {
  const [held] = await tx.$queryRaw<Turn[]>`
    SELECT t.judged_at AS "judgedAt", t.revision AS "judgedBy", s.revision
      FROM alarm_turn t JOIN site s ON s.id = t.site_id AND s.revision > 0
     WHERE t.site_id = ${siteId}::uuid FOR UPDATE OF t SKIP LOCKED`;
  return held ?? null;
}

/**
 * Ends a turn, in one statement: notes that the site was judged and by which revision, removes what was judged and, where there
 * was any, makes known to pages that its readings have changed.
 *
 * @param arrivals   ids of the batches that were judged
 */
export async function endTurn(
  tx: Transaction,
  siteId: string,
  { revision, at, arrivals }: { revision: number; at: Date; arrivals: readonly string[] },
): Promise<void> {
  await tx.$executeRaw`
    WITH judged AS (
      DELETE FROM reading_arrival WHERE site_id = ${siteId}::uuid AND id = ANY(${[...arrivals]}::uuid[]))
    UPDATE alarm_turn SET judged_at = ${at.toISOString()}::timestamptz, revision = ${revision}
     WHERE site_id = ${siteId}::uuid
    RETURNING CASE WHEN ${arrivals.length > 0} THEN pg_notify(${NEWS_CHANNEL}, ${saidOf(siteId, 'readings')})::text END`;
}

/**
 * Sites whose alarms want judging: something arrived, something is due, they were described anew, or nobody looked at them
 * for a while.
 *
 * @param at             the present
 * @param lookedBefore   whoever was last judged before this instant is judged again
 * @param setBackAfter   whoever was last judged after this one was so by a clock that has been set back since
 */
export async function findSitesToJudge(at: Date, lookedBefore: Date, setBackAfter: Date): Promise<string[]> {
  const instant = at.toISOString();
  const rows = await database().$queryRaw<{ id: string }[]>`
    SELECT s.id FROM site s LEFT JOIN alarm_turn t ON t.site_id = s.id
     WHERE s.revision > 0
       AND (t.site_id IS NULL OR t.revision <> s.revision OR t.judged_at < ${lookedBefore.toISOString()}::timestamptz
            OR t.judged_at > ${setBackAfter.toISOString()}::timestamptz
            OR EXISTS (SELECT FROM reading_arrival a WHERE a.site_id = s.id)
            OR EXISTS (SELECT FROM alarm_watch w WHERE w.site_id = s.id AND w.due_at <= ${instant}::timestamptz)
            OR EXISTS (SELECT FROM alarm_open o WHERE o.site_id = s.id AND NOT o.acknowledged AND NOT o.suppressed
                          AND o.next_step_at <= ${instant}::timestamptz)
            OR EXISTS (SELECT FROM alarm_open o WHERE o.site_id = s.id AND o.turn_by <= ${instant}::timestamptz)
            OR EXISTS (SELECT FROM alarm_suppressed w WHERE w.site_id = s.id AND w.until <= ${instant}::timestamptz)
            OR EXISTS (SELECT FROM state_open v WHERE v.site_id = s.id AND v.begun_at > t.judged_at))`;
  return rows.map(({ id }) => id);
}

/** When the alarms of a site were last judged; null: never. */
export async function lastJudged(siteId: string): Promise<Date | null> {
  const turn = await database().alarmTurn.findUnique({ where: { siteId } });
  return turn?.judgedAt ?? null;
}

/**
 * Waits until nobody judges a site, and keeps them from it until the transaction ends.
 *
 * @returns   revision of the site as it is; null when it is not described
 */
export async function holdTurn(tx: Transaction, siteId: string): Promise<number | null> {
  await tx.$queryRaw`SELECT FROM alarm_turn WHERE site_id = ${siteId}::uuid FOR UPDATE`;
  const [site] = await tx.$queryRaw<{ revision: number }[]>`
    SELECT revision FROM site WHERE id = ${siteId}::uuid AND revision > 0`;
  return site?.revision ?? null;
}
