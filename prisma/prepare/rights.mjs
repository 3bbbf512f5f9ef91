// @ts-check
// Who may do what with the tables. The processes of Holdfast own none of them: they may read and write, but never change
// or remove a row of a table whose rows are only added, and never drop a table or switch off its triggers.
import pg from 'pg';
import { withRole } from '../../app/_start/with-role.mjs';
import { settingsFor } from '../engine/connection.mjs';
import { APP_ROLE, ensureAccount, ensureMember, ensureRole } from './roles.mjs';
import { openRows } from './row-policies.mjs';

/**
 * How the record is guarded besides its triggers: the processes connect as an account that may not break it (`account`),
 * or their sessions take on a role that may not (`role`), or not at all (`triggers`).
 *
 * @typedef {'account' | 'role' | 'triggers'} Guard
 */

/** @typedef {{ name: string, schema: string, isTable: boolean, isGuarded: boolean }} Relation */

/** Schemas whose relations the processes use. */
const SCHEMAS = ['public', 'graphile_worker'];
/** What only the owner writes: what was migrated. */
const OWNERS = new Set(['public._prisma_migrations', 'graphile_worker.migrations']);

/**
 * Gives the processes the rights they need and no more. Run by the owner after every migration, so that a new table is
 * never forgotten: a table is guarded when its triggers refuse change.
 *
 * @param {string} ownerUrl address of the database as the owner of its tables
 * @param {string} appUrl address by which the processes connect; the same when only one was given
 * @param {{ mayMakeAccount: boolean }} may whether the account of `appUrl` is Holdfast's own to make
 * @returns {Promise<Guard>} what guards the record then, as found by trying
 */
export async function grantRights(ownerUrl, appUrl, { mayMakeAccount }) {
  const { username: account, password } = credentials(appUrl);
  const hasOwnAccount = account !== credentials(ownerUrl).username;
  await as(ownerUrl, async (owner) => {
    const hasRole = await ensureRole(owner);
    if (mayMakeAccount) await ensureAccount(owner, account, password);
    const isMember = hasRole && (await ensureMember(owner, account));
    if (!isMember && !hasOwnAccount) return;
    await grantTo(owner, isMember ? APP_ROLE : account, hasOwnAccount ? [account] : []);
  });
  if (hasOwnAccount) return (await mayNotBreak(appUrl)) ? 'account' : 'triggers';
  return (await mayNotBreak(withRole(appUrl, APP_ROLE))) ? 'role' : 'triggers';
}

/**
 * @param {pg.Client} owner of the tables
 * @param {string} grantee role or account that gets the rights
 * @param {string[]} accounts that shall have none besides
 */
async function grantTo(owner, grantee, accounts) {
  const to = pg.escapeIdentifier(grantee);
  const from = ['PUBLIC', ...new Set([grantee, ...accounts].map((name) => pg.escapeIdentifier(name)))].join(', ');
  const { rows } = await owner.query(RELATIONS, [SCHEMAS]);
  const statements = [
    'BEGIN',
    `GRANT CONNECT ON DATABASE ${pg.escapeIdentifier(owner.database ?? '')} TO ${to}`,
    ...SCHEMAS.flatMap((schema) => [
      `REVOKE CREATE ON SCHEMA ${schema} FROM ${from}`,
      `GRANT USAGE ON SCHEMA ${schema} TO ${to}`,
    ]),
    'GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA graphile_worker TO '.concat(to),
    'GRANT USAGE ON ALL SEQUENCES IN SCHEMA graphile_worker TO '.concat(to),
    ...rows.flatMap((/** @type {Relation} */ relation) => {
      const name = `${relation.schema}.${pg.escapeIdentifier(relation.name)}`;
      return [`REVOKE ALL ON ${name} FROM ${from}`, `GRANT ${rightsOn(relation)} ON ${name} TO ${to}`];
    }),
    'COMMIT',
  ];
  await owner.query(statements.join(';\n'));
  await openRows(owner, grantee);
}

/** Tables and views of our schemas that we own, and whether each has a trigger that refuses change and removal. */
const RELATIONS = `
  SELECT c.relname AS name, n.nspname AS schema, c.relkind IN ('r', 'p') AS "isTable",
         EXISTS (SELECT FROM pg_trigger t JOIN pg_proc f ON f.oid = t.tgfoid
                  WHERE t.tgrelid = c.oid AND f.proname = 'refuse_change') AS "isGuarded"
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
   WHERE n.nspname = ANY($1) AND c.relkind IN ('r', 'p', 'v', 'm') AND pg_has_role(c.relowner, 'USAGE')`;

/**
 * A view is only read: through one that can be written, its owner's rights would be at hand.
 *
 * @param {Relation} relation table or view
 * @returns {string} what the processes may do with it
 */
function rightsOn({ schema, name, isTable, isGuarded }) {
  if (!isTable || OWNERS.has(`${schema}.${name}`)) return 'SELECT';
  return isGuarded ? 'SELECT, INSERT' : 'SELECT, INSERT, UPDATE, DELETE';
}

/**
 * @param {string} url address by which the processes would connect
 * @returns {Promise<boolean>} whether whoever connects so can neither change a guarded table nor switch its triggers off
 */
async function mayNotBreak(url) {
  try {
    return await as(url, async (client) => {
      const { rows } = await client.query(`
        SELECT count(*) > 0 AND NOT bool_or(
                 has_table_privilege(c.oid, 'UPDATE') OR has_table_privilege(c.oid, 'DELETE')
              OR has_table_privilege(c.oid, 'TRUNCATE') OR pg_has_role(c.relowner, 'MEMBER'))
           AND NOT has_parameter_privilege('session_replication_role', 'SET') AS safe
          FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace AND n.nspname = 'public'
         WHERE EXISTS (SELECT FROM pg_trigger t JOIN pg_proc f ON f.oid = t.tgfoid
                        WHERE t.tgrelid = c.oid AND f.proname = 'refuse_change')`);
      return rows[0].safe;
    });
  } catch (error) {
    // 42501 and 22023: the session may not take on the role, or the role is not there.
    const { code = '' } = /** @type {{ code?: string }} */ (error);
    if (code === '42501' || code === '22023') return false;
    throw error;
  }
}

/**
 * @template T
 * @param {string} url address
 * @param {(client: pg.Client) => Promise<T>} work to do while connected
 * @returns {Promise<T>} what the work gave
 */
async function as(url, work) {
  const client = new pg.Client(settingsFor(url).client);
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/**
 * @param {string} url address
 * @returns {{ username: string, password: string }} who connects by it
 */
function credentials(url) {
  const { username, password } = new URL(url);
  return { username: decodeURIComponent(username), password: decodeURIComponent(password) };
}
