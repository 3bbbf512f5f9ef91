// @ts-check
// The job library shuts the rows of its tables to all but their owner; the processes have to reach them.
import pg from 'pg';

/** Its tables whose rows are shut, and that have no policy of ours yet. */
const SHUT = `
  SELECT c.relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
   WHERE n.nspname = 'graphile_worker' AND c.relrowsecurity
     AND NOT EXISTS (SELECT FROM pg_policy p WHERE p.polrelid = c.oid AND p.polname = $1)`;

/**
 * @param {pg.Client} owner of the tables
 * @param {string} grantee role or account that may see and write every job
 */
export async function openRows(owner, grantee) {
  const policy = `all jobs for ${grantee}`;
  const { rows } = await owner.query(SHUT, [policy]);
  for (const { name } of rows)
    await owner.query(
      `CREATE POLICY ${pg.escapeIdentifier(policy)} ON graphile_worker.${pg.escapeIdentifier(name)}
           TO ${pg.escapeIdentifier(grantee)} USING (true) WITH CHECK (true)`,
    );
}
