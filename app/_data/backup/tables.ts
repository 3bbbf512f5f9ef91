import 'server-only';
import type { ClientBase } from 'pg';

/** A table and the columns that are written into it. */
export interface Table {
  name: string;
  columns: string[];
}

/** Columns the database works out itself cannot be written; parts of a table come with the whole. */
const TABLES = `
  SELECT c.relname::text AS name,
         ARRAY(SELECT a.attname::text FROM pg_attribute a
                WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = ''
                ORDER BY a.attnum) AS columns,
         ARRAY(SELECT r.relname::text FROM pg_constraint k JOIN pg_class r ON r.oid = k.confrelid
                WHERE k.conrelid = c.oid AND k.contype = 'f' AND k.confrelid <> c.oid) AS "refersTo"
    FROM pg_class c
   WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p') AND NOT c.relispartition
   ORDER BY c.relname`;

/**
 * Every table of Holdfast, none before one it refers to.
 *
 * @param client   a connection
 * @throws         when tables refer to one another in a circle, so that none can be filled first
 */
export async function tablesInOrder(client: ClientBase): Promise<Table[]> {
  const { rows } = await client.query<Table & { refersTo: string[] }>(TABLES);
  const ordered: Table[] = [];
  const placed = new Set<string>();
  while (ordered.length < rows.length) {
    const ready = rows.filter(({ name, refersTo }) => !placed.has(name) && refersTo.every((to) => placed.has(to)));
    if (ready.length === 0) throw new Error('tables refer to one another in a circle');
    for (const { name, columns } of ready) {
      ordered.push({ name, columns });
      placed.add(name);
    }
  }
  return ordered;
}
