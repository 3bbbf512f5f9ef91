// @ts-check
// Whether a server already runs over a folder, as PostgreSQL's own note beside the data says.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { bornAt } from '../born.mjs';

/** @typedef {{ pid: number, port: number, isReady: boolean }} Noted */

/**
 * @param {string} folder of the cluster
 * @returns {Noted | undefined} the process noted there, if it is alive and truly the server of that folder
 */
export function notedServer(folder) {
  const lines = note(folder);
  const pid = Number(lines[0]);
  if (!(pid > 0) || bornAt(pid) === undefined || !commandOf(pid).includes(folder)) return undefined;
  return { pid, port: Number(lines[3]), isReady: lines[7]?.trim() === 'ready' };
}

/**
 * @param {string} folder of the cluster
 * @returns {string[]} the lines of the server's note: process, folder, time, port, socket, address, memory, state
 */
function note(folder) {
  try {
    return readFileSync(join(folder, 'postmaster.pid'), 'utf8').split('\n');
  } catch {
    return [];
  }
}

/**
 * After a crash of the whole machine the number in the note may belong to anybody, hence this look at what it runs.
 *
 * @param {number} pid process number
 * @returns {string} the command line it was started with
 */
function commandOf(pid) {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8');
  } catch {
    // No /proc on this system, or the process has just gone.
  }
  try {
    return execFileSync('ps', ['-o', 'command=', '-p', String(pid)], { encoding: 'utf8' });
  } catch {
    return '';
  }
}
