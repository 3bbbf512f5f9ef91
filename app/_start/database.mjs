// @ts-check
// The database Holdfast will use: the person's own when DATABASE_URL names one, else the embedded one; made ready by a
// program of its own, which may use packages where the starter may not.
import { join } from 'node:path';
import { diskFull, Failure, speaksOfFullDisk } from './failure.mjs';
import { embeddedServer, stopEmbedded } from './postgres/server.mjs';
import { runProgram } from './run-program.mjs';
import { say, step } from './say.mjs';
import { onEnd } from './undo.mjs';
import { withRole } from './with-role.mjs';

/** The role that holds the rights of the processes, as `prisma/prepare` makes it. */
const APP_ROLE = 'holdfast_app';

/**
 * @typedef {object} Database
 * @property {string} url address by which the processes connect
 * @property {string | undefined} ownerUrl address of the owner of the tables, where that is another account
 * @property {import('./postgres/server.mjs').Server | undefined} embedded the server when it is the embedded one
 */

/**
 * @param {{ databaseUrl: string | undefined, databaseOwnerUrl: string | undefined }} given the person's own database
 * @param {string} data folder for the embedded one
 * @returns {Promise<Database>} how it is reached
 */
export async function openDatabase({ databaseUrl: url, databaseOwnerUrl: ownerUrl }, data) {
  if (url) return { url, ownerUrl, embedded: undefined };
  // Said before it runs, so that a start broken off at this very moment leaves no server behind.
  onEnd(() => stopEmbedded(data));
  const embedded = await step(`database: PostgreSQL over ${data}`, () => embeddedServer(data));
  return { url: embedded.url, ownerUrl: embedded.ownerUrl, embedded };
}

/**
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} surroundings environment for the program
 * @param {Database} database to make ready
 * @param {{ setUp?: boolean }} [wanted] whether somebody is to be let in to make the first account; what is restored brings
 *   its own
 * @returns {Promise<{ url: string, setUpToken: string | undefined }>} the address by which the processes shall connect, and
 *   the token of the link that makes the first account, while there is none
 * @throws {Failure} when it cannot be used: the one sentence that the program gave
 */
export async function prepareDatabase(root, surroundings, { url, ownerUrl, embedded }, { setUp = false } = {}) {
  const { guard, setUpToken } = await step('database: tables and rights', async () => {
    const flags = [...(setUp ? ['--set-up'] : []), ...(embedded ? ['--own'] : [])];
    const args = [join(root, 'prisma/prepare/prepare.mjs'), ...flags];
    const env = { ...surroundings, DATABASE_URL: url, DATABASE_OWNER_URL: ownerUrl ?? '' };
    const { status, output } = await runProgram({ file: process.execPath, args, env, cwd: root });
    if (status !== 0) throw new Failure(speaksOfFullDisk(output) ? diskFull('the database') : output.trim());
    return { guard: /^guarded by: (\w+)$/m.exec(output)?.[1], setUpToken: /^set-up (\S+)$/m.exec(output)?.[1] };
  });
  if (guard === 'role') return { url: withRole(url, APP_ROLE), setUpToken };
  if (guard !== 'account') say(UNGUARDED);
  return { url, setUpToken };
}

/** One line for whoever brought a database whose account may break the record. */
const UNGUARDED =
  'record: guarded by triggers alone, for the account in DATABASE_URL may change its tables. Name one there that owns ' +
  "nothing, and the owner's address in DATABASE_OWNER_URL.";

/**
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} surroundings environment for the program
 * @param {string} ownerUrl address of a database that may be missing, as the owner of its server
 * @throws {Failure} when it can neither be found nor made
 */
export async function createDatabase(root, surroundings, ownerUrl) {
  const args = [join(root, 'prisma/prepare/create.mjs')];
  const env = { ...surroundings, DATABASE_OWNER_URL: ownerUrl };
  const { status, output } = await runProgram({ file: process.execPath, args, env, cwd: root });
  if (status !== 0) throw new Failure(output.trim());
}
