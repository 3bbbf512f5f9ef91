// @ts-check
// The start, step by step. What needs packages is loaded only once they are installed.
import { Failure, sentenceFor } from './failure.mjs';
import { frontOf } from './front.mjs';
import { claim } from './only-one.mjs';
import { readOptions } from './options.mjs';
import { installPackages } from './packages.mjs';
import { dataFolder, ROOT } from './places.mjs';
import { isEnding, onEnd, undoAll } from './undo.mjs';

/**
 * @param {string[]} words from the command line
 * @param {NodeJS.ProcessEnv} environment of this process
 */
export async function main(words, environment) {
  const data = dataFolder(environment);
  let isUp = false;
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => void undoAll().then(() => process.exit(isUp ? 0 : 1)));
  }
  // Whoever read what is printed may be gone; Holdfast goes on.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined);
  try {
    await start(words, environment, data);
    isUp = true;
  } catch (error) {
    if (isEnding()) return;
    console.error(sentenceFor(error, data) ?? error);
    await undoAll();
    process.exit(1);
  }
}

/**
 * @param {string[]} words from the command line
 * @param {NodeJS.ProcessEnv} environment of this process
 * @param {string} data folder
 */
async function start(words, environment, data) {
  const options = readOptions(words, environment);
  // By name: a browser binds a passkey to a name, never to a number.
  const address = `http://localhost:${options.port}`;
  const front = frontOf(options.tls, environment);
  console.log('Holdfast');
  const { release, tookOver } = claim(data, address);
  onEnd(release);
  const { requireFreePort } = await import('./web-port.mjs');
  await requireFreePort(options.port, tookOver);
  if (front) await requireFreePort(front.port, tookOver);
  const env = { ...environment, NEXT_TELEMETRY_DISABLED: '1' };
  await installPackages(ROOT, env);
  if (isEnding()) throw new Failure('Holdfast was stopped while it started.');
  const { bringUp } = await import('./bring-up.mjs');
  await bringUp({ ...options, front, address, data, root: ROOT, env });
}
