import type { Copy } from '../../_support/database';

/**
 * What stands in every table of ours, and how many jobs wait: two of them that are alike say that nothing was changed. When a
 * session was last seen is left out: that is noted once a minute of whoever asks for anything.
 *
 * @returns   rows and checksum, by table
 */
export async function fingerprint(query: Copy['query']): Promise<Record<string, string>> {
  const { rows: tables } = await query(
    `SELECT relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
      WHERE n.nspname = 'public' AND c.relkind IN ('r', 'p') ORDER BY relname`,
  );
  const row = (table: string) => (table === 'public."session"' ? "to_jsonb(t) - 'seen_at'" : 't');
  const parts = [...tables.map(({ name }) => `public."${name}"`), 'graphile_worker._private_jobs'].map(
    (table) =>
      `SELECT '${table.replace(/^public\."(.*)"$/, '$1')}' AS name, count(*) || ' rows, ' || coalesce(md5(string_agg(p.print, '' ORDER BY p.print)), '') AS print FROM ${table} t, md5((${row(table)})::text) AS p(print)`,
  );
  const { rows } = await query(parts.join(' UNION ALL '));
  return Object.fromEntries(rows.map(({ name, print }) => [name, print]));
}
