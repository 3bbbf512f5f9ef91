// @ts-check
// Stops the server over a folder, whoever started it.
import { setTimeout as wait } from 'node:timers/promises';
import { isAlive } from '../born.mjs';
import { notedServer } from './running.mjs';

const POLL_MS = 50;
/** s for a quick and clean end: open transactions are rolled back and everything is written. */
const CLEAN_S = 20;
/** s for an end without writing, which the next start recovers from. */
const HARD_S = 5;

/**
 * @param {string} folder of the cluster
 * @param {{ isClean: boolean }} [how] whether what is in memory is worth writing; it is, when left out
 */
export async function stop(folder, { isClean } = { isClean: true }) {
  const server = notedServer(folder);
  if (!server) return;
  // SIGINT is PostgreSQL's "fast": SIGTERM would wait for the last client to leave of its own accord.
  if (isClean && (await end(server.pid, 'SIGINT', CLEAN_S))) return;
  await end(server.pid, 'SIGQUIT', HARD_S);
}

/**
 * @param {number} pid of the server
 * @param {'SIGINT' | 'SIGQUIT'} signal to send
 * @param {number} patienceS s to wait
 * @returns {Promise<boolean>} whether it is gone
 */
async function end(pid, signal, patienceS) {
  try {
    process.kill(pid, signal);
  } catch {
    return !isAlive(pid);
  }
  for (let waitedMs = 0; waitedMs < patienceS * 1000; waitedMs += POLL_MS) {
    if (!isAlive(pid)) return true;
    await wait(POLL_MS);
  }
  return false;
}
