import 'server-only';
import type { SheetDue } from '#core/rounds/sheet-due';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A due time as it is kept, with the key of its sheet. */
export interface KeptDue extends SheetDue {
  sheet: string;
}

/** The due times of a sheet, in the version they follow from. */
export interface DuesOf {
  id: string;
  version: number;
  dues: readonly SheetDue[];
}

/**
 * Makes the due times of a site that are to come be these. Those that have come stay as they were: what was due then was due.
 * Two questions, however many sheets there are.
 *
 * @param sheets   every living sheet of the site
 * @param now      the instant
 */
export async function keepSheetDues(
  tx: Pick<Transaction, '$executeRaw'>,
  siteId: string,
  sheets: readonly DuesOf[],
  now: Date,
): Promise<void> {
  const rows = sheets.flatMap(({ id, version, dues }) => dues.map((due) => ({ id, version, due })));
  const iso = (of: keyof Omit<SheetDue, 'date'>) => rows.map(({ due }) => new Date(due[of]).toISOString());
  const [ids, at, versions] = [rows.map(({ id }) => id), iso('dueAt'), rows.map(({ version }) => version)];
  await tx.$executeRaw`
    DELETE FROM sheet_due d WHERE d.site_id = ${siteId}::uuid AND d.due_at > ${now.toISOString()}::timestamptz
       AND NOT EXISTS (SELECT FROM unnest(${ids}::uuid[], ${at}::timestamptz[], ${versions}::int[]) AS n(sheet_id, due_at, version)
                        WHERE n.sheet_id = d.sheet_id AND n.due_at = d.due_at AND n.version = d.version)`;
  await tx.$executeRaw`
    INSERT INTO sheet_due (site_id, sheet_id, due_at, day, version, opens_at, late_at, closes_at)
    SELECT ${siteId}::uuid, n.sheet_id, n.due_at, n.day, n.version, n.opens_at, n.late_at, n.closes_at
      FROM unnest(${ids}::uuid[], ${at}::timestamptz[], ${rows.map(({ due }) => due.date)}::text[], ${versions}::int[],
                  ${iso('opensAt')}::timestamptz[], ${iso('lateAt')}::timestamptz[], ${iso('closesAt')}::timestamptz[])
           AS n(sheet_id, due_at, day, version, opens_at, late_at, closes_at)
    ON CONFLICT DO NOTHING`;
}

interface Raw extends Record<'dueAt' | 'opensAt' | 'lateAt' | 'closesAt', Date> {
  sheet: string;
  date: string;
  round: string | null;
}

/** Days back within which a round that was begun, and never signed, is still told of. */
const BEGUN_DAYS = 14;

/**
 * The kept due times of living sheets that have come and still matter, in order: those that closed since an instant or may yet be made
 * good, and older ones whose round was begun and is not signed, or was signed since. One question.
 *
 * @param since   the instant
 * @param at      up to which they have come
 * @returns       each with the id of the round that was begun for it, if one was
 */
export async function openSheetDues(
  siteId: string,
  since: Date,
  at: Date,
): Promise<(KeptDue & { round: string | null })[]> {
  const [from, now] = [since.toISOString(), at.toISOString()];
  const rows = await database().$queryRaw<Raw[]>`
    SELECT s.key AS sheet, d.day AS date, d.due_at AS "dueAt", d.opens_at AS "opensAt", d.late_at AS "lateAt",
           d.closes_at AS "closesAt", r.id AS round
      FROM sheet_due d
      JOIN round_sheet s ON s.site_id = d.site_id AND s.id = d.sheet_id AND s.retired_at IS NULL
      LEFT JOIN round r ON r.site_id = d.site_id AND r.sheet_id = d.sheet_id AND r.due_at = d.due_at
     WHERE d.site_id = ${siteId}::uuid AND d.due_at < ${now}::timestamptz AND d.closes_at > ${from}::timestamptz
     UNION ALL
    SELECT s.key, d.day, d.due_at, d.opens_at, d.late_at, d.closes_at, r.id
      FROM round r
      JOIN sheet_due d ON d.site_id = r.site_id AND d.sheet_id = r.sheet_id AND d.due_at = r.due_at
      JOIN round_sheet s ON s.site_id = d.site_id AND s.id = d.sheet_id AND s.retired_at IS NULL
     WHERE r.site_id = ${siteId}::uuid AND r.due_at < ${now}::timestamptz
       AND r.due_at > ${now}::timestamptz - make_interval(days => ${BEGUN_DAYS}::int) AND d.closes_at <= ${from}::timestamptz
       AND NOT EXISTS (SELECT FROM round_signature g
                        WHERE g.site_id = r.site_id AND g.round_id = r.id AND g.kind = 'signed' AND g.at < ${from}::timestamptz)
     ORDER BY "dueAt", sheet`;
  return rows.map(({ dueAt, opensAt, lateAt, closesAt, ...row }) => ({
    ...row,
    dueAt: dueAt.getTime(),
    opensAt: opensAt.getTime(),
    lateAt: lateAt.getTime(),
    closesAt: closesAt.getTime(),
  }));
}
