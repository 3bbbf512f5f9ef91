// @ts-check
// Keeps a process running: when it ends unasked it is started again, after a pause that grows with every quick failure.
import { setTimeout as wait } from 'node:timers/promises';

/** ms of the first pause, and of the longest. */
const FIRST_PAUSE_MS = 500;
const LONGEST_PAUSE_MS = 30_000;
/** ms a process must live for its next failure to count as a first one. */
const LONG_LIFE_MS = 60_000;
/** ms a process has to end after SIGTERM, before SIGKILL. */
const PATIENCE_MS = 10_000;

/** @typedef {import('node:child_process').ChildProcess} ChildProcess */

/**
 * @param {number} failures quick ones in a row, 1 or more
 * @returns {number} ms to wait before the next start
 */
export function pauseAfter(failures) {
  return Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** (failures - 1));
}

/**
 * @param {string} name of the process, for what is printed
 * @param {string} log where it says why it ended, for what is printed
 * @param {() => ChildProcess} start starts it
 * @param {(line: string) => void} tell prints what happened
 * @returns {{ stop: () => Promise<void>, current: () => ChildProcess }} how to end it for good, and the process itself
 */
export function keepRunning(name, log, start, tell) {
  let failures = 0;
  let isStopping = false;
  let pause = /** @type {NodeJS.Timeout | undefined} */ (undefined);
  let child = begin();

  function begin() {
    const began = performance.now();
    const process_ = start();
    process_.once('exit', (code, signal) => {
      if (isStopping) return;
      failures = performance.now() - began > LONG_LIFE_MS ? 1 : failures + 1;
      const pauseMs = pauseAfter(failures);
      tell(`${name}: ended with ${signal ?? `code ${code}`}; starting it again in ${pauseMs / 1000} s (${log})`);
      pause = setTimeout(() => {
        child = begin();
      }, pauseMs);
    });
    return process_;
  }

  return {
    current: () => child,
    stop: async () => {
      isStopping = true;
      clearTimeout(pause);
      await endProcess(child);
    },
  };
}

/** @param {ChildProcess} child to end, politely first */
async function endProcess(child) {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  const patience = new AbortController();
  const late = wait(PATIENCE_MS, 'late', { signal: patience.signal }).catch(() => 'in time');
  if ((await Promise.race([gone, late])) === 'late') {
    child.kill('SIGKILL');
    await gone;
  }
  patience.abort();
}
