import type { Copy } from './database';
import { facility } from './build-facility';
import { keep } from './stored';

/** A row of a table with the key of its system, living or retired. */
interface Row {
  id: string;
  isLiving: boolean;
  system: string | null;
}

/**
 * Begins the built facility anew before a test, and asks what became of it.
 *
 * @param query   asks the test's database as its owner
 */
export function describedSite(query: Copy['query']) {
  return {
    /** Forgets every site and keeps the built facility again. */
    anew: async () => {
      await query(`SET session_replication_role = replica; DO $$ DECLARE name text; BEGIN
        FOR name IN SELECT c.table_name FROM information_schema.columns c JOIN information_schema.tables t USING (table_schema, table_name)
          WHERE t.table_schema = 'public' AND t.table_type = 'BASE TABLE' AND c.column_name = 'site_id'
        LOOP EXECUTE format('DELETE FROM %I', name); END LOOP; DELETE FROM site; END $$`);
      await keep(facility());
    },
    /** Bodies of the record's entries of a kind, oldest first. */
    ofRecord: async (kind: string): Promise<Record<string, unknown>[]> => {
      const { rows } = await query('SELECT body FROM record WHERE kind = $1 ORDER BY seq', [kind]);
      return rows.map(({ body }) => body);
    },
    /** Every row a key ever had in a table, in the order they were made. */
    rowsOf: async (table: string, key: string): Promise<Row[]> => {
      const { rows } = await query(
        `SELECT t.id, t.retired_at IS NULL AS "isLiving", s.key AS system FROM ${table} t
           LEFT JOIN system s ON s.id = t.system_id WHERE t.key = $1 ORDER BY t.id`,
        [key],
      );
      return rows;
    },
  };
}
