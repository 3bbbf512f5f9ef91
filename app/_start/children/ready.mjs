// @ts-check
// When the web process answers, or what stands before it.
import { setTimeout as wait } from 'node:timers/promises';
import { Failure } from '../failure.mjs';

const POLL_MS = 100;
const PATIENCE_MS = 60_000;

/**
 * @param {string} address of the web process
 * @param {() => boolean} isAlive whether the process still runs
 * @param {string} log where it says why not
 * @throws {Failure} when it ends or does not answer in time
 */
export async function untilItAnswers(address, isAlive, log) {
  for (let waitedMs = 0; waitedMs < PATIENCE_MS; waitedMs += POLL_MS) {
    if (!isAlive()) throw new Failure(`The web process ended before it answered: the reason is in ${log}.`);
    try {
      await fetch(`${address}/api/health`, { redirect: 'manual', signal: AbortSignal.timeout(5000) });
      return;
    } catch {
      await wait(POLL_MS);
    }
  }
  throw new Failure(`The web process did not answer within ${PATIENCE_MS / 1000} s: see ${log}.`);
}
