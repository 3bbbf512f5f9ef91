// @ts-check
// The embedded server of a data folder: made at the first start, reused while it runs, started again when it died.
import { chmodSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { requireRoom, ROOM_FOR } from '../disk.mjs';
import { Failure } from '../failure.mjs';
import { keepLogShort } from '../log-file.mjs';
import { makeDataFolder } from '../places.mjs';
import { requireSameMajor } from './major.mjs';
import { create, exists } from './create.mjs';
import { launch } from './launch.mjs';
import { personFor } from './person.mjs';
import { freePort, isFree } from './port.mjs';
import { notedServer } from './running.mjs';
import { stop } from './stop.mjs';
import { addressOf, appAddressOf, newAppAccount, newStored, readStored, writeStored } from './stored.mjs';

/**
 * @typedef {object} Server
 * @property {string} url address of Holdfast's database for the processes; neither it nor their account need exist yet
 * @property {string} ownerUrl address of the same database as the owner of everything in it
 * @property {boolean} wasRunning whether it was found running
 * @property {() => boolean} isAlive whether its process is there
 * @property {() => Promise<void>} startAgain after it died, on the same port
 */

/**
 * @param {string} data folder of Holdfast
 * @returns {Promise<Server>} the server, answering
 * @throws {Failure} when it cannot be had
 */
export async function embeddedServer(data) {
  makeDataFolder(data);
  const home = realpathSync(data);
  const folder = join(home, 'postgres');
  // An account that stands in for root must be able to pass through; the secrets in the folder are closed by themselves.
  if (personFor(folder).identity) chmodSync(home, 0o711);
  if (exists(folder)) requireSameMajor(home, folder);
  const stored = exists(folder) ? await known(home) : await fresh(home, folder);
  const cluster = { folder, log: join(home, 'postgres.log'), stored };
  const running = notedServer(folder);
  const wasRunning = running?.isReady === true;
  if (wasRunning) {
    stored.port = running.port;
  } else {
    await requireRoom(home, ROOM_FOR.running);
    keepLogShort(cluster.log);
    await launch(await onFreePort(home, cluster));
  }
  return {
    url: appAddressOf(cluster.stored),
    ownerUrl: addressOf(cluster.stored),
    wasRunning,
    isAlive: () => notedServer(folder) !== undefined,
    startAgain: () => launch(cluster),
  };
}

/** @param {string} data folder whose server, if one runs, shall end cleanly */
export async function stopEmbedded(data) {
  await stop(join(realpathSync(data), 'postgres'));
}

/**
 * @param {string} home data folder
 * @returns {Promise<import('./stored.mjs').Stored>} what is remembered about the server
 */
async function known(home) {
  const stored = readStored(home);
  if (stored?.app) return stored;
  if (stored) {
    const gained = { ...stored, app: newAppAccount() };
    writeStored(home, gained);
    return gained;
  }
  throw new Failure(`There is a database in ${home}, but not its password file database.json: put that file back.`);
}

/**
 * @param {string} home data folder
 * @param {string} folder of the cluster to make
 * @returns {Promise<import('./stored.mjs').Stored>} what to remember about it
 */
async function fresh(home, folder) {
  await requireRoom(home, ROOM_FOR.database);
  const stored = newStored(await freePort());
  writeStored(home, stored);
  await create(folder, stored, { isDurable: true });
  return stored;
}

/**
 * The port is kept from start to start, unless some other program has taken it meanwhile.
 *
 * @param {string} home data folder
 * @param {import('./launch.mjs').Cluster} cluster about to be served
 * @returns {Promise<import('./launch.mjs').Cluster>} the same, with its port changed when it had to be
 */
async function onFreePort(home, cluster) {
  if (notedServer(cluster.folder) || (await isFree(cluster.stored.port))) return cluster;
  cluster.stored.port = await freePort();
  writeStored(home, cluster.stored);
  return cluster;
}
