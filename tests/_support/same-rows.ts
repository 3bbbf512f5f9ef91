import { LEFT_OUT } from '#data/backup/left-out';
import type { Copy } from './database';

const TABLES = `SELECT relname::text AS name FROM pg_class
                 WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p') ORDER BY relname`;

/** What PostgreSQL itself knows of tables, columns, keys, checks, triggers, functions, views and rights. */
const SHAPES = `
  SELECT 'column' AS what, table_name || '.' || column_name || ' ' || data_type || ' ' || is_nullable || ' ' ||
         coalesce(column_default, '') AS said FROM information_schema.columns WHERE table_schema = 'public'
  UNION ALL SELECT 'key or check', conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid)
    FROM pg_constraint WHERE connamespace = 'public'::regnamespace AND contype <> 'n'
  UNION ALL SELECT 'index', indexdef FROM pg_indexes WHERE schemaname = 'public'
  UNION ALL SELECT 'trigger', pg_get_triggerdef(oid) FROM pg_trigger WHERE NOT tgisinternal
     AND tgrelid IN (SELECT oid FROM pg_class WHERE relnamespace = 'public'::regnamespace)
  UNION ALL SELECT 'function', pg_get_functiondef(oid) FROM pg_proc WHERE pronamespace = 'public'::regnamespace
  UNION ALL SELECT 'view', viewname || ' ' || definition FROM pg_views WHERE schemaname = 'public'
  UNION ALL SELECT 'right', relname || ' ' || coalesce(relacl::text, '') FROM pg_class
     WHERE relnamespace = 'public'::regnamespace AND relkind IN ('r', 'p', 'v')
  ORDER BY what, said`;

type Query = Copy['query'];

/** Names of all tables. */
export async function tableNames(query: Query): Promise<string[]> {
  return (await query(TABLES)).rows.map(({ name }) => name);
}

/** Every row of every table that a backup holds, as PostgreSQL writes rows. */
export async function everyRow(query: Query): Promise<Record<string, string[]>> {
  const rows: Record<string, string[]> = {};
  for (const name of await tableNames(query)) {
    if (LEFT_OUT.includes(name)) continue;
    const found = await query(`SELECT t::text AS row FROM ${name} t ORDER BY 1`);
    rows[name] = found.rows.map(({ row }) => row);
  }
  return rows;
}

/** Everything but the rows. */
export async function everyShape(query: Query): Promise<object[]> {
  return (await query(SHAPES)).rows;
}
