import 'server-only';
import { database } from '../client';
import type { Author } from '../plans/add';
import type { Transaction } from '../transaction';

/** A kept sheet that is in force, and since when it stands as it does. */
export interface SheetInForce {
  id: string;
  key: string;
  version: number;
  inForceFrom: Date;
}

/** One version of a sheet: when, by whom (account, or `local`) and why it came into force. */
export interface SheetVersion {
  version: number;
  inForceFrom: Date;
  by: string | null;
  reason: string | null;
}

/** Adds a version of each of these sheets, as they stand now. @param ids of sheets that were added or changed */
export async function addSheetVersions(
  tx: Transaction,
  siteId: string,
  ids: readonly string[],
  { by, reason }: Author,
  at: Date,
): Promise<void> {
  if (ids.length === 0) return;
  await tx.$executeRaw`
    INSERT INTO round_sheet_version (site_id, sheet_id, version, body, in_force_from, written_by, reason)
    SELECT s.site_id, s.id,
           1 + coalesce((SELECT max(v.version) FROM round_sheet_version v WHERE v.site_id = s.site_id AND v.sheet_id = s.id), 0),
           s.detail || jsonb_build_object('key', s.key, 'name', s.name), ${at.toISOString()}::timestamptz, ${by}::text, ${reason}::text
      FROM round_sheet s WHERE s.site_id = ${siteId}::uuid AND s.id = ANY(${[...ids]}::uuid[])`;
}

/** The sheets of a site that are in force, each in its latest version. */
export async function listSheetsInForce(
  siteId: string,
  asker: Pick<Transaction, '$queryRaw'> = database(),
): Promise<SheetInForce[]> {
  return await asker.$queryRaw<SheetInForce[]>`
    SELECT s.id, s.key, v.version, v.in_force_from AS "inForceFrom"
      FROM round_sheet s
      JOIN LATERAL (SELECT version, in_force_from FROM round_sheet_version v
                     WHERE v.site_id = s.site_id AND v.sheet_id = s.id ORDER BY version DESC LIMIT 1) v ON true
     WHERE s.site_id = ${siteId}::uuid AND s.retired_at IS NULL
     ORDER BY s.ordinal`;
}

/** The versions of a living sheet, the latest first. */
export async function listSheetVersions(siteId: string, key: string): Promise<SheetVersion[]> {
  const rows = await database().roundSheetVersion.findMany({
    where: { siteId, sheet: { key, retiredAt: null } },
    orderBy: { version: 'desc' },
    select: { version: true, inForceFrom: true, writtenBy: true, reason: true },
  });
  return rows.map(({ writtenBy, ...row }) => ({ ...row, by: writtenBy }));
}
