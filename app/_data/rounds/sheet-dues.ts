import 'server-only';
import type { SheetDue } from '#core/rounds/sheet-due';
import { database } from '../client';
import type { Transaction } from '../transaction';

/** A due time as it is kept, with the key of its sheet. */
export interface KeptDue extends SheetDue {
  sheet: string;
}

/**
 * Makes the due times of a sheet that are to come be these. Those that have come stay as they were: what was due then was due.
 *
 * @param version   version of the sheet that they follow from
 * @param now       the instant
 */
export async function keepSheetDues(
  tx: Pick<Transaction, '$executeRaw'>,
  siteId: string,
  { id, version }: { id: string; version: number },
  dues: readonly SheetDue[],
  now: Date,
): Promise<void> {
  const iso = (of: keyof Omit<SheetDue, 'date'>) => dues.map((due) => new Date(due[of]).toISOString());
  const at = iso('dueAt');
  await tx.$executeRaw`
    DELETE FROM sheet_due WHERE site_id = ${siteId}::uuid AND sheet_id = ${id}::uuid
       AND due_at > ${now.toISOString()}::timestamptz
       AND NOT (version = ${version}::int AND due_at = ANY(${at}::timestamptz[]))`;
  if (dues.length === 0) return;
  await tx.$executeRaw`
    INSERT INTO sheet_due (site_id, sheet_id, due_at, day, version, opens_at, late_at, closes_at)
    SELECT ${siteId}::uuid, ${id}::uuid, d.due_at, d.day, ${version}::int, d.opens_at, d.late_at, d.closes_at
      FROM unnest(${at}::timestamptz[], ${dues.map(({ date }) => date)}::text[], ${iso('opensAt')}::timestamptz[],
                  ${iso('lateAt')}::timestamptz[], ${iso('closesAt')}::timestamptz[]) AS d(due_at, day, opens_at, late_at, closes_at)
    ON CONFLICT DO NOTHING`;
}

/** Forgets what was to come of sheets that are retired. */
export async function dropRetiredDues(tx: Pick<Transaction, '$executeRaw'>, siteId: string, now: Date): Promise<void> {
  await tx.$executeRaw`
    DELETE FROM sheet_due d USING round_sheet s
     WHERE d.site_id = ${siteId}::uuid AND s.site_id = d.site_id AND s.id = d.sheet_id AND s.retired_at IS NOT NULL
       AND d.due_at > ${now.toISOString()}::timestamptz`;
}

/** The kept due times of living sheets within some time, in order. */
export async function listSheetDues(siteId: string, from: Date, to: Date): Promise<KeptDue[]> {
  const rows = await database().$queryRaw<
    (Record<'dueAt' | 'opensAt' | 'lateAt' | 'closesAt', Date> & { sheet: string; date: string })[]
  >`
    SELECT s.key AS sheet, d.day AS date, d.due_at AS "dueAt", d.opens_at AS "opensAt", d.late_at AS "lateAt", d.closes_at AS "closesAt"
      FROM sheet_due d JOIN round_sheet s ON s.site_id = d.site_id AND s.id = d.sheet_id AND s.retired_at IS NULL
     WHERE d.site_id = ${siteId}::uuid AND d.due_at >= ${from.toISOString()}::timestamptz
       AND d.due_at < ${to.toISOString()}::timestamptz
     ORDER BY d.due_at, s.ordinal`;
  return rows.map(({ dueAt, opensAt, lateAt, closesAt, ...row }) => ({
    ...row,
    dueAt: dueAt.getTime(),
    opensAt: opensAt.getTime(),
    lateAt: lateAt.getTime(),
    closesAt: closesAt.getTime(),
  }));
}
