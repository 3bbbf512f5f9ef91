// @ts-check
// Starts a process of Holdfast's own: watched by the supervisor, watching it, its words in a log.
import { spawn } from 'node:child_process';
import { closeSync, openSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { keepLogShort } from '../log-file.mjs';

const WATCH = new URL('./parent-watch.mjs', import.meta.url).href;

/** Words for Node under which a web server ends soon when it is asked to. */
export const ENDS_SOON = ['--import', new URL('./end-soon.mjs', import.meta.url).href];

/**
 * @typedef {object} Child
 * @property {string[]} nodeFlags words for Node itself
 * @property {string[]} args the program and its words
 * @property {NodeJS.ProcessEnv} env its environment
 * @property {string} cwd the checkout
 * @property {string} log file for what it prints
 */

/**
 * @param {Child} child to start
 * @returns {import('node:child_process').ChildProcess} the process
 */
export function spawnChild({ nodeFlags, args, env, cwd, log }) {
  keepLogShort(log);
  const output = openSync(log, 'a', 0o600);
  const words = ['--import', WATCH, ...nodeFlags, ...args];
  const child = spawn(process.execPath, words, {
    env,
    cwd,
    // A session of its own: Ctrl-C reaches the supervisor alone, which ends everything in the right order.
    detached: true,
    stdio: ['ignore', output, output, 'ipc'],
  });
  closeSync(output);
  return child;
}

/** @returns {string} path of the worker's program */
export function workerProgram() {
  return fileURLToPath(new URL('../../_server/worker/main.ts', import.meta.url));
}

/** @returns {string} path of the program that encrypts before the pages */
export function frontProgram() {
  return fileURLToPath(new URL('../../_server/front/main.ts', import.meta.url));
}
