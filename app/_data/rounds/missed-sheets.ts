import 'server-only';
import type { Missed } from '#core/plans/missed';
import { database } from '../client';

/**
 * The latest time that each of some living sheets of a site was missed: nobody had begun it when the next might be.
 *
 * @param zone   IANA zone of the site, in whose days it is told
 * @param keys   of the sheets
 * @returns      by key of the sheet
 */
export async function findMissedSheets(
  siteId: string,
  zone: string,
  at: Date,
  keys: readonly string[],
): Promise<Map<string, Missed>> {
  const rows = await database().$queryRaw<(Missed & { sheet: string })[]>`
    SELECT DISTINCT ON (s.id) s.key AS sheet,
           to_char(d.opens_at AT TIME ZONE ${zone}::text, 'YYYY-MM-DD') AS opened,
           to_char(d.closes_at AT TIME ZONE ${zone}::text, 'YYYY-MM-DD') AS since
      FROM sheet_due d
      JOIN round_sheet s ON s.site_id = d.site_id AND s.id = d.sheet_id AND s.retired_at IS NULL
     WHERE d.site_id = ${siteId}::uuid AND s.key = ANY(${[...keys]}::text[]) AND d.closes_at <= ${at.toISOString()}::timestamptz
       AND d.due_at > ${at.toISOString()}::timestamptz - interval '400 days'
       AND NOT EXISTS (SELECT FROM round r WHERE r.site_id = d.site_id AND r.sheet_id = d.sheet_id AND r.due_at = d.due_at)
     ORDER BY s.id, d.due_at DESC`;
  return new Map(rows.map(({ sheet, ...missed }) => [sheet, missed]));
}

/** When a sheet was last missed at each site, of the past day: its reviews may come out differently. */
export async function lastMissedBySite(at: Date): Promise<Map<string, Date>> {
  const rows = await database().$queryRaw<{ siteId: string; last: Date }[]>`
    SELECT s.id AS "siteId", m.last
      FROM site s
      JOIN LATERAL (
        SELECT max(d.closes_at) AS last
          FROM sheet_due d
         WHERE d.site_id = s.id AND d.closes_at <= ${at.toISOString()}::timestamptz
           AND d.closes_at > ${at.toISOString()}::timestamptz - interval '1 day'
           AND NOT EXISTS (SELECT FROM round r WHERE r.site_id = d.site_id AND r.sheet_id = d.sheet_id AND r.due_at = d.due_at)
      ) m ON m.last IS NOT NULL`;
  return new Map(rows.map(({ siteId, last }) => [siteId, last]));
}

/** How often each living sheet of a site was missed in a year and a month. @returns by key of the sheet; one that was not is not there */
export async function countMissedSheets(siteId: string, at: Date): Promise<Map<string, number>> {
  const rows = await database().$queryRaw<{ sheet: string; many: number }[]>`
    SELECT s.key AS sheet, count(*)::int AS many
      FROM sheet_due d
      JOIN round_sheet s ON s.site_id = d.site_id AND s.id = d.sheet_id AND s.retired_at IS NULL
     WHERE d.site_id = ${siteId}::uuid AND d.closes_at <= ${at.toISOString()}::timestamptz
       AND d.due_at > ${at.toISOString()}::timestamptz - interval '400 days'
       AND NOT EXISTS (SELECT FROM round r WHERE r.site_id = d.site_id AND r.sheet_id = d.sheet_id AND r.due_at = d.due_at)
     GROUP BY s.key`;
  return new Map(rows.map(({ sheet, many }) => [sheet, many]));
}
