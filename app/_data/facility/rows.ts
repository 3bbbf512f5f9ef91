import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import type { Transaction } from '../transaction';
import type { Fields } from './form';
import type { Identity } from './identity';
import type { Member } from './members';
import { changingColumns, NOUNS, type Table } from './nouns';

/** What became of the rows of one table. */
export interface Written {
  added: string[];
  changed: string[];
  retired: string[];
}

/**
 * A thing of a facility as a row.
 *
 * @param identity   ids of everything in the facility
 * @param nameIds    ids of the names of persons in it, by name
 */
export function rowOf(
  siteId: string,
  member: Member,
  identity: Identity,
  nameIds: ReadonlyMap<string, string>,
): Fields {
  const { table, system, key, ordinal } = member;
  const { key: keyField, columns, links, names } = NOUNS[table];
  const row: Fields = { site_id: siteId, id: identity.idOf(table, system, key), key, ordinal, retired_at: null };
  if (system !== null) row.system_id = identity.idOf('system', null, system);
  const detail: Fields = {};
  for (const [field, value] of Object.entries(member.fields)) {
    if (value === undefined || field === keyField) continue;
    const link = links[field];
    if (link) row[link.column] = identity.linked(link.table, system, String(value));
    else if (names[field]) row[names[field]] = nameIds.get(String(value));
    else if (columns[field]) row[columns[field]] = value;
    else detail[field] = value;
  }
  return { ...row, detail };
}

/**
 * Makes the living rows of a table be these: new ones are added, others are changed where they differ, and what is no
 * longer among them is retired.
 *
 * @param rows     all that are to be living
 * @param minted   ids of those that are new
 * @param at       the instant
 */
export async function writeRows(
  tx: Transaction,
  {
    siteId,
    table,
    rows,
    minted,
    at,
  }: { siteId: string; table: Table; rows: Fields[]; minted: ReadonlySet<string>; at: Date },
): Promise<Written> {
  const ids = rows.map(({ id }) => String(id));
  const retired = await tx.$queryRaw<{ id: string }[]>`
    UPDATE ${name(table)} SET retired_at = ${at.toISOString()}::timestamptz
     WHERE site_id = ${siteId}::uuid AND retired_at IS NULL AND id <> ALL (${ids}::uuid[]) RETURNING id`;
  const written = rows.length === 0 ? [] : await upsert(tx, table, rows);
  return {
    added: written.filter((id) => minted.has(id)),
    changed: written.filter((id) => !minted.has(id)),
    retired: retired.map(({ id }) => id),
  };
}

/** Adds rows, or changes those that are there and differ. @returns ids of the rows that were touched */
async function upsert(tx: Transaction, table: Table, rows: readonly Fields[]): Promise<string[]> {
  const columns = changingColumns(table);
  const set = columns.map((column) => Prisma.sql`${name(column)} = excluded.${name(column)}`);
  const differ = columns.map((column) => Prisma.sql`held.${name(column)} IS DISTINCT FROM excluded.${name(column)}`);
  const touched = await tx.$queryRaw<{ id: string }[]>`
    INSERT INTO ${name(table)} AS held
    SELECT * FROM jsonb_populate_recordset(NULL::${name(table)}, ${JSON.stringify(rows)}::jsonb)
        ON CONFLICT (site_id, id) DO UPDATE SET ${Prisma.join(set)} WHERE ${Prisma.join(differ, ' OR ')}
    RETURNING id`;
  return touched.map(({ id }) => id);
}

/** A table or column of ours, never a text from outside. */
function name(of: string): Prisma.Sql {
  return Prisma.raw(`"${of}"`);
}
