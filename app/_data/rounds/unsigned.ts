import 'server-only';
import { database } from '../client';

/** A round that was begun and that nobody has signed. */
export interface UnsignedRound {
  id: string;
  name: string;
  /** Whether it walks a kept sheet, the timetable, or neither. */
  of: 'sheet' | 'timetable' | 'besides';
  begunAt: Date;
  begunBy: string;
  /** Names of the systems that its sheet passes, as they were called then. */
  systems: string[];
}

interface Raw extends Omit<UnsignedRound, 'systems'> {
  systems: (string | null)[];
  many: number;
}

/**
 * Rounds of a site that were begun and not signed, the latest first, whenever that was; but those of which a later one by the same
 * sheet or of the same time of the timetable was signed, which stands in for them. One question.
 *
 * @param but    ids of rounds that are told elsewhere
 * @param most   and no more of them
 * @returns      them, and how many there are
 */
export async function unsignedRounds(
  siteId: string,
  but: readonly string[],
  most: number,
): Promise<{ rounds: UnsignedRound[]; many: number }> {
  // Each row is looked at once, however the rounds are spread: those of years stand there.
  const rows = await database().$queryRaw<Raw[]>`
    WITH signed AS MATERIALIZED (
      SELECT DISTINCT round_id FROM round_signature WHERE site_id = ${siteId}::uuid AND kind = 'signed'),
    walked AS MATERIALIZED (
      SELECT r.id, r.begun_at, r.due_at, coalesce(r.slot_id, r.sheet_id) AS same, g.round_id IS NOT NULL AS is_signed,
             max(r.due_at) FILTER (WHERE g.round_id IS NOT NULL) OVER (PARTITION BY coalesce(r.slot_id, r.sheet_id)) AS last_signed
        FROM round r LEFT JOIN signed g ON g.round_id = r.id WHERE r.site_id = ${siteId}::uuid),
    left_open AS MATERIALIZED (
      SELECT id, count(*) OVER ()::int AS many FROM walked
       WHERE NOT is_signed AND id <> ALL(${[...but]}::uuid[]) AND (same IS NULL OR last_signed IS NULL OR last_signed < due_at)
       ORDER BY begun_at DESC, id LIMIT ${most})
    SELECT r.id, r.name, r.begun_at AS "begunAt", r.begun_by AS "begunBy", o.many,
           CASE WHEN r.sheet_id IS NOT NULL THEN 'sheet' WHEN r.slot_id IS NOT NULL THEN 'timetable' ELSE 'besides' END AS of,
           jsonb_path_query_array(r.sheet, '$.places[*].system.name') AS systems
      FROM left_open o JOIN round r ON r.site_id = ${siteId}::uuid AND r.id = o.id
     ORDER BY r.begun_at DESC, r.id`;
  const rounds = rows.map(({ many: _, systems, ...row }) => ({
    ...row,
    systems: [...new Set(systems.filter((name) => name !== null))],
  }));
  return { rounds, many: rows[0]?.many ?? 0 };
}
