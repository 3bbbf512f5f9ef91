// @ts-check
// The port of the web process, asked about before the long steps.
import { setTimeout as wait } from 'node:timers/promises';
import { Failure } from './failure.mjs';
import { isFree } from './postgres/port.mjs';

/** s the web process of a Holdfast that was killed may take to notice and end. */
const PATIENCE_S = 8;

/**
 * @param {number} port wanted
 * @param {boolean} mayClear whether it may still be held by what a killed Holdfast left behind
 * @throws {Failure} when it is taken
 */
export async function requireFreePort(port, mayClear) {
  for (let waitedS = 0; !(await isFree(port)); waitedS++) {
    if (!mayClear || waitedS >= PATIENCE_S) {
      throw new Failure(`Port ${port} is taken by another program: choose another one with --port N or PORT.`);
    }
    await wait(1000);
  }
}
