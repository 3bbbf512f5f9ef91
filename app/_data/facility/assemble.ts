import 'server-only';
import type { Fields } from './form';
import { NOUNS, TABLES, type Table } from './nouns';

/** A row of a table, with columns by their names in the database. */
export type Row = Fields & { id: string; key: string; system_id?: string | null; detail: Fields };

/** The living rows of every table, in the order of the file. */
export type StoredRows = Record<Table, Row[]>;

/**
 * Puts a facility together again from rows, in the form of the file.
 *
 * @param site   the site's own row
 * @param rows   all living rows
 */
export function assemble({ key, name, zone, detail }: Row, rows: StoredRows): Fields {
  const keys = new Map(TABLES.flatMap((table) => rows[table].map((row) => [row.id, row.key] as const)));
  const lists: Fields = {};
  for (const table of TABLES) {
    const { siteList } = NOUNS[table];
    if (siteList === undefined) continue;
    const own = rows[table].filter((row) => !row.system_id);
    // Optional in the description: none is not the same there as an empty list.
    if (table === 'round_sheet' && own.length === 0) continue;
    lists[siteList] = own.map((row) => ({
      ...memberOf(table, row, keys),
      ...(table === 'system' ? systemLists(row, rows, keys) : {}),
    }));
  }
  return { site: { key, name, zone, ...detail }, ...lists };
}

function systemLists({ id }: Row, rows: StoredRows, keys: ReadonlyMap<string, string>): Fields {
  const lists: Fields = {};
  for (const table of TABLES) {
    const { systemList } = NOUNS[table];
    if (systemList === undefined) continue;
    lists[systemList] = rows[table].filter((row) => row.system_id === id).map((row) => memberOf(table, row, keys));
  }
  return lists;
}

/** One member as the file writes it. */
function memberOf(table: Table, row: Row, keys: ReadonlyMap<string, string>): Fields {
  const { key, columns, links } = NOUNS[table];
  const member: Fields = { [key]: row.key, ...row.detail };
  for (const [field, column] of Object.entries(columns)) if (row[column] !== null) member[field] = row[column];
  for (const [field, { column }] of Object.entries(links)) {
    const linked = row[column];
    if (typeof linked === 'string') member[field] = keys.get(linked);
  }
  return { ...member, ...together(table, row) };
}

/** What is kept in tables of its own. */
function together(table: Table, { name, plan, people, tests, off_by, detail }: Row): Fields {
  if (table === 'person') return { name };
  if (table === 'equipment') return { plan };
  if (table === 'shift') return { people };
  if (table !== 'safeguard') return {};
  return { tests: tests ?? [], ...(detail.off ? { off: { by: off_by, ...(detail.off as Fields) } } : {}) };
}
