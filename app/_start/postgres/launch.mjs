// @ts-check
// Starts the server over an existing cluster and waits until it answers.
import { closeSync, openSync, readFileSync, statSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { diskFull, Failure, speaksOfFullDisk } from '../failure.mjs';
import { binaries } from './binaries.mjs';
import { personFor } from './person.mjs';
import { isFree } from './port.mjs';
import { spawnAs } from './run-as.mjs';
import { notedServer } from './running.mjs';

/** s a former server's last children may take to end after it was killed; until then a new one refuses to start. */
const PATIENCE_S = 20;
/** s a server that is alive may take to recover after a crash. */
const RECOVERY_S = 300;
const POLL_MS = 50;

/**
 * @typedef {object} Cluster
 * @property {string} folder of the cluster
 * @property {string} log file the server writes to
 * @property {import('./stored.mjs').Stored} stored who may connect, and on which port
 * @property {string[]} [settings] further settings, `name=value`
 * @property {import('./binaries.mjs').Programs} [programs] the PostgreSQL that serves it; Holdfast's own when left out
 */

/**
 * @param {Cluster} cluster to serve
 * @returns {Promise<void>} settled when the server answers
 * @throws {Failure} when it does not come up
 */
export async function launch(cluster) {
  for (let waitedS = 0; ; waitedS++) {
    // A former server that was still recovering when it was looked for may have come up meanwhile.
    if (notedServer(cluster.folder)?.isReady) return;
    const words = await tryOnce(cluster);
    if (words === undefined) return;
    if (speaksOfFullDisk(words)) throw new Failure(diskFull(cluster.folder));
    if (waitedS >= PATIENCE_S) throw new Failure(await refusal(cluster, words));
    await wait(1000);
  }
}

/**
 * @param {Cluster} cluster to serve
 * @returns {Promise<string | undefined>} nothing when the server answers, else what it wrote before it ended
 */
async function tryOnce({ folder, log, stored, settings = [], programs = binaries() }) {
  const before = statSync(log, { throwIfNoEntry: false })?.size ?? 0;
  const output = openSync(log, 'a', 0o600);
  const words = [
    'listen_addresses=127.0.0.1',
    `port=${stored.port}`,
    // No socket file: it would lie in a folder all may enter, and its path may be too long.
    'unix_socket_directories=',
    'timezone=UTC',
    'log_timezone=UTC',
    ...settings,
  ].flatMap((setting) => ['-c', setting]);
  // A session of its own: Ctrl-C reaches Holdfast alone, which stops the server last.
  const child = spawnAs(personFor(folder), programs.postgres, ['-D', folder, ...words], {
    detached: true,
    stdio: ['ignore', output, output],
  });
  closeSync(output);
  child.unref();
  let ended = false;
  child.on('exit', () => {
    ended = true;
  });
  child.on('error', () => {
    ended = true;
  });
  for (let waitedMs = 0; waitedMs < RECOVERY_S * 1000; waitedMs += POLL_MS) {
    if (ended) return readFileSync(log).subarray(before).toString('utf8');
    if (notedServer(folder)?.isReady) return undefined;
    await wait(POLL_MS);
  }
  throw new Failure(`PostgreSQL has been recovering its database in ${folder} for ${RECOVERY_S} s: see ${log}.`);
}

/**
 * @param {Cluster} cluster that could not be served
 * @param {string} words the server's last
 * @returns {Promise<string>} the sentence
 */
async function refusal({ folder, log, stored }, words) {
  if (!(await isFree(stored.port))) return `Another program took port ${stored.port}, which the database needs.`;
  const reason =
    words
      .trimEnd()
      .split('\n')
      .findLast((line) => /FATAL|PANIC|error/i.test(line)) ?? words.trimEnd();
  return `${reason}\n\nPostgreSQL could not start over ${folder}: the reason is above and in ${log}.`;
}
