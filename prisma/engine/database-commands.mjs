// @ts-check
// The three errands Prisma sends its engine on before any migration: can the database be reached, create it, drop it.
import pg from 'pg';
import { settingsFor, withDatabase } from './connection.mjs';

/** Prisma's own error codes for what PostgreSQL and the network answer. */
const PRISMA_CODES = new Map([
  ['3D000', 'P1003'],
  ['ECONNREFUSED', 'P1001'],
  ['ENOTFOUND', 'P1001'],
  ['ETIMEDOUT', 'P1001'],
]);

/**
 * Runs one errand and ends with exit code 0, or with 1 and the reason on stderr in the form Prisma reads.
 *
 * @param {string | undefined} command `can-connect-to-database`, `create-database` or `drop-database`
 * @param {string} url address of the database
 * @returns {Promise<number>} exit code
 */
export async function runDatabaseCommand(command, url) {
  const { database } = settingsFor(url);
  const target = command === 'can-connect-to-database' ? url : withDatabase(url, 'postgres');
  const client = new pg.Client(settingsFor(target).client);
  try {
    await client.connect();
    const name = pg.escapeIdentifier(database);
    if (command === 'create-database') await client.query(`CREATE DATABASE ${name}`);
    if (command === 'drop-database') await client.query(`DROP DATABASE ${name}`);
    await client.end();
    return 0;
  } catch (error) {
    complain(error);
    return 1;
  }
}

/**
 * Prisma drops the first line of stderr and parses every later one as JSON, hence the line that says nothing.
 *
 * @param {unknown} error what went wrong
 */
function complain(error) {
  const { code, message } = /** @type {{ code?: string, message?: string }} */ (error);
  const line = (/** @type {string} */ level, /** @type {object} */ fields) =>
    JSON.stringify({ level, target: 'schema_engine::logger', timestamp: new Date().toISOString(), fields });
  const reason = {
    error_code: PRISMA_CODES.get(code ?? '') ?? 'P1000',
    message: message || String(code),
    is_panic: false,
  };
  process.stderr.write(`${line('INFO', { message: 'schema engine' })}\n${line('ERROR', reason)}`);
}
