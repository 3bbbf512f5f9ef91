// @ts-check
// One Holdfast a data folder. The claim is a file that names its process; a claim whose process is gone is void.
import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bornAt } from './born.mjs';
import { Failure } from './failure.mjs';
import { makeDataFolder } from './places.mjs';

/** @typedef {{ pid: number, born: string, address: string }} Claim */

/**
 * @param {string} data folder to claim; made when missing
 * @param {string} address where Holdfast will answer
 * @returns {{ release: () => void, tookOver: boolean }} how to give it up, and whether a former Holdfast ended without
 *   giving it up itself
 * @throws {Failure} when another Holdfast holds it
 */
export function claim(data, address) {
  makeDataFolder(data);
  const path = join(data, 'running.json');
  /** @type {Claim} */
  const mine = { pid: process.pid, born: bornAt(process.pid) ?? '', address };
  let tookOver = false;
  while (!place(path, mine)) {
    const held = read(path);
    if (held && bornAt(held.pid) === held.born) throw new Failure(alreadyRunning(held, data));
    if (held) tookOver = true;
    setAside(path, held);
  }
  return { release: () => read(path)?.pid === process.pid && rmSync(path, { force: true }), tookOver };
}

/**
 * @param {Claim} held by the other one
 * @param {string} data the folder
 * @returns {string} the sentence
 */
function alreadyRunning(held, data) {
  return `Holdfast is already running at ${held.address} (process ${held.pid}, data in ${data}).`;
}

/**
 * Puts the claim in place whole, or not at all: written aside and then linked, which fails when the name is taken.
 *
 * @param {string} path of the claim
 * @param {Claim} mine to place
 * @returns {boolean} whether it is in place
 */
function place(path, mine) {
  const aside = `${path}.${process.pid}`;
  writeFileSync(aside, JSON.stringify(mine));
  try {
    linkSync(aside, path);
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    return false;
  } finally {
    rmSync(aside, { force: true });
  }
}

/**
 * @param {string} path of the claim
 * @returns {Claim | undefined} who holds it; nothing when it is missing or not readable as a claim
 */
function read(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8'));
  } catch {
    return undefined;
  }
}

/**
 * Takes a void claim away. Two may try at once, and the slower must not take away the quicker one's new claim: what was
 * moved is looked at, and put back when it is not the void one.
 *
 * @param {string} path of the claim
 * @param {Claim | undefined} held the void claim
 */
function setAside(path, held) {
  const aside = `${path}.void.${process.pid}`;
  try {
    renameSync(path, aside);
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'ENOENT') return;
    throw error;
  }
  const moved = read(aside);
  if (moved && moved.pid !== held?.pid) renameSync(aside, path);
  else rmSync(aside, { force: true });
}
