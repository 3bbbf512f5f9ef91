// @ts-check
// The role whose rights the processes have, and the account of the embedded server that has it.
import pg from 'pg';

/** It holds the rights and cannot sign in. A server has one, whichever of its databases are Holdfast's. */
export const APP_ROLE = 'holdfast_app';

/** What PostgreSQL says when somebody else made the same role this very moment. */
const THERE_ALREADY = new Set(['42710', '23505']);
/** What it says to those who may not. */
const MAY_NOT = '42501';

/**
 * @param {pg.Client} owner who asks
 * @returns {Promise<boolean>} whether the role is there now
 */
export async function ensureRole(owner) {
  const { rowCount } = await owner.query('SELECT FROM pg_roles WHERE rolname = $1', [APP_ROLE]);
  return rowCount === 1 || (await done(owner, `CREATE ROLE ${APP_ROLE} NOLOGIN`));
}

/**
 * The password is set each time, so that the server always takes the one that is remembered beside its data.
 *
 * @param {pg.Client} owner who asks
 * @param {string} account of the processes
 * @param {string} password of it
 */
export async function ensureAccount(owner, account, password) {
  const name = pg.escapeIdentifier(account);
  await done(owner, `CREATE ROLE ${name}`);
  await owner.query(
    `ALTER ROLE ${name} LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION NOBYPASSRLS PASSWORD ${pg.escapeLiteral(password)}`,
  );
}

/**
 * @param {pg.Client} owner who asks
 * @param {string} account that shall have the role
 * @returns {Promise<boolean>} whether it has it now
 */
export async function ensureMember(owner, account) {
  const { rows } = await owner.query(
    `SELECT pg_has_role(r.oid, $2, 'MEMBER') AND NOT r.rolsuper AS "isMember" FROM pg_roles r WHERE r.rolname = $1`,
    [account, APP_ROLE],
  );
  return rows[0]?.isMember === true || (await done(owner, `GRANT ${APP_ROLE} TO ${pg.escapeIdentifier(account)}`));
}

/**
 * @param {pg.Client} owner who asks
 * @param {string} sql statement
 * @returns {Promise<boolean>} whether it is so now; false when the owner may not
 */
async function done(owner, sql) {
  try {
    await owner.query(sql);
    return true;
  } catch (error) {
    const { code = '' } = /** @type {{ code?: string }} */ (error);
    if (code === MAY_NOT) return false;
    if (THERE_ALREADY.has(code)) return true;
    throw error;
  }
}
