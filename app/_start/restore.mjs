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
  const { url, words } = target(process.argv.slice(2));
  await installPackages(ROOT, process.env);
  const { generateClient } = await import('./generate.mjs');
  await generateClient(ROOT, process.env);
  process.exitCode = url ? await restore(url, words) : await restoreEmbedded(words);
} catch (error) {
  console.error(sentenceFor(error, data) ?? error);
  process.exitCode = 1;
}
await undoAll();

/**
 * @param {string[]} given on the command line
 * @returns {{ url: string | undefined, words: string[] }} the database that was named, and everything else that was said
 */
function target(given) {
  const at = given.indexOf('--into');
  if (at < 0) return { url: process.env.DATABASE_URL || undefined, words: given };
  const url = given[at + 1];
  if (!url) throw new Failure('--into is followed by the address of an empty database.');
  return { url, words: given.filter((_, place) => place !== at && place !== at + 1) };
}

/**
 * @param {string[]} words for the command
 * @returns {Promise<number>} its exit code
 */
async function restoreEmbedded(words) {
  const { release } = claim(data, 'a restore of a backup');
  onEnd(release);
  const { embeddedServer, stopEmbedded } = await import('./postgres/server.mjs');
  const { exists } = await import('./postgres/create.mjs');
  const folder = join(realpathSync(data), 'postgres');
  const isNew = !exists(folder);
  onEnd(() => stopEmbedded(data));
  const { url } = await embeddedServer(data);
  const { createDatabase } = await import('./database.mjs');
  await createDatabase(ROOT, { ...process.env, DATABASE_URL: url });
  const status = await restore(url, words);
  // A server that was made for this and holds nothing is taken away again.
  if (status !== 0 && isNew) {
    await stopEmbedded(data);
    for (const name of ['postgres', 'postgres.log', 'database.json'])
      rmSync(join(data, name), { recursive: true, force: true });
  }
  return status;
}

/**
 * @param {string} url address of the database, as its owner
 * @param {string[]} words for the command
 * @returns {Promise<number>} its exit code; its words are already on the screen
 */
function restore(url, words) {
  const command = ['--conditions=react-server', '--import', 'tsx', join(ROOT, 'app/_server/command/restore.ts')];
  return new Promise((resolve, reject) => {
    const env = { ...process.env, DATABASE_URL: url };
    const child = spawn(process.execPath, [...command, ...words], { stdio: 'inherit', env });
    onEnd(() => void child.kill());
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}
