// @ts-check
// The database Holdfast will use: the person's own when DATABASE_URL names one, else the embedded one; made ready by a
// program of its own, which may use packages where the starter may not.
import { join } from 'node:path';
import { diskFull, Failure, speaksOfFullDisk } from './failure.mjs';
import { embeddedServer, stopEmbedded } from './postgres/server.mjs';
import { runProgram } from './run-program.mjs';
import { step } from './say.mjs';
import { onEnd } from './undo.mjs';

/** @typedef {{ url: string, embedded: import('./postgres/server.mjs').Server | undefined }} Database */

/**
 * @param {string | undefined} url of the person's own database
 * @param {string} data folder for the embedded one
 * @returns {Promise<Database>} its address, and the server when it is the embedded one
 */
export async function openDatabase(url, data) {
  if (url) return { url, embedded: undefined };
  // Said before it runs, so that a start broken off at this very moment leaves no server behind.
  onEnd(() => stopEmbedded(data));
  const embedded = await step(`database: PostgreSQL over ${data}`, () => embeddedServer(data));
  return { url: embedded.url, embedded };
}

/**
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} env environment with the address in DATABASE_URL
 * @param {{ mayCreate: boolean }} rights whether a missing database may be made
 * @returns {Promise<string | undefined>} token of the link that makes the first account, while there is none
 * @throws {Failure} when it cannot be used: the one sentence that the program gave
 */
export async function prepareDatabase(root, env, { mayCreate }) {
  return await step('database: tables', async () => {
    const args = [join(root, 'prisma/prepare/prepare.mjs'), '--set-up', ...(mayCreate ? ['--create'] : [])];
    const { status, output } = await runProgram({ file: process.execPath, args, env, cwd: root });
    if (status === 0) return /^set-up (\S+)$/m.exec(output)?.[1];
    throw new Failure(speaksOfFullDisk(output) ? diskFull('the database') : output.trim());
  });
}
