// @ts-check
// `npm run restore`: a backup into an empty database: that of --into or DATABASE_URL, else a new embedded one of the data
// folder, whose server runs for as long as it takes.
import { spawn } from 'node:child_process';
import { realpathSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Failure, sentenceFor } from './failure.mjs';
import { claim } from './only-one.mjs';
import { installPackages } from './packages.mjs';
import { dataFolder, ROOT } from './places.mjs';
import { onEnd, undoAll } from './undo.mjs';

const data = dataFolder(process.env);

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
  process.on(signal, () => void undoAll().then(() => process.exit(1)));
}

try {
  const { given, words } = target(process.argv.slice(2));
  await installPackages(ROOT, process.env);
  const { generateClient } = await import('./generate.mjs');
  await generateClient(ROOT, process.env);
  process.exitCode = given.databaseUrl
    ? await restoreInto({ url: given.databaseUrl, ownerUrl: given.databaseOwnerUrl, embedded: undefined }, words)
    : await restoreEmbedded(words);
} catch (error) {
  console.error(sentenceFor(error, data) ?? error);
  process.exitCode = 1;
}
await undoAll();

/** @typedef {import('./database.mjs').Database} Database */

/**
 * @param {string[]} said on the command line
 * @returns {{ given: { databaseUrl: string | undefined, databaseOwnerUrl: string | undefined }, words: string[] }} the
 *   database that was named, and everything else that was said
 */
function target(said) {
  const { DATABASE_URL, DATABASE_OWNER_URL } = process.env;
  const at = said.indexOf('--into');
  if (at < 0)
    return {
      given: { databaseUrl: DATABASE_URL || undefined, databaseOwnerUrl: DATABASE_OWNER_URL || undefined },
      words: said,
    };
  const databaseUrl = said[at + 1];
  if (!databaseUrl) throw new Failure('--into is followed by the address of an empty database.');
  const words = said.filter((_, place) => place !== at && place !== at + 1);
  return { given: { databaseUrl, databaseOwnerUrl: undefined }, words };
}

/**
 * @param {string[]} words for the command
 * @returns {Promise<number>} its exit code
 */
async function restoreEmbedded(words) {
  const { release } = claim(data, 'a restore of a backup');
  onEnd(release);
  const { openDatabase, createDatabase } = await import('./database.mjs');
  const { stopEmbedded } = await import('./postgres/server.mjs');
  const { exists } = await import('./postgres/create.mjs');
  const isNew = !exists(join(realpathSync(data), 'postgres'));
  const database = await openDatabase({ databaseUrl: undefined, databaseOwnerUrl: undefined }, data);
  await createDatabase(ROOT, process.env, ownerOf(database));
  const status = await restoreInto(database, words);
  // A server that was made for this and holds nothing is taken away again.
  if (status !== 0 && isNew) {
    await stopEmbedded(data);
    for (const name of ['postgres', 'postgres.log', 'database.json'])
      rmSync(join(data, name), { recursive: true, force: true });
  }
  return status;
}

/**
 * @param {Database} database to fill
 * @returns {string} its address as the owner of its tables
 */
function ownerOf({ url, ownerUrl }) {
  return ownerUrl ?? url;
}

/**
 * @param {Database} database to fill, and then to make ready for this copy
 * @param {string[]} words for the command
 * @returns {Promise<number>} its exit code
 */
async function restoreInto(database, words) {
  const status = await load(ownerOf(database), words);
  if (status !== 0) return status;
  const { prepareDatabase } = await import('./database.mjs');
  await prepareDatabase(ROOT, process.env, database);
  console.log('Start Holdfast with `npm start`: reviews are computed anew, and everybody signs in again.');
  return 0;
}

/**
 * @param {string} url address of the database, as its owner
 * @param {string[]} words for the command
 * @returns {Promise<number>} its exit code; its words are already on the screen
 */
function load(url, words) {
  const command = ['--conditions=react-server', '--import', 'tsx', join(ROOT, 'app/_server/command/restore.ts')];
  return new Promise((resolve, reject) => {
    const env = { ...process.env, DATABASE_URL: url };
    const child = spawn(process.execPath, [...command, ...words], { stdio: 'inherit', env });
    onEnd(() => void child.kill());
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}
