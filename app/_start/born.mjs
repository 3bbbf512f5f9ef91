// @ts-check
// Which process a number means. Numbers are used again, so a process is known by its number and by when it began.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

/**
 * @param {number} pid process number
 * @returns {string | undefined} when that process began, in whatever words the system uses; nothing when it is gone
 */
export function bornAt(pid) {
  if (!isAlive(pid)) return undefined;
  try {
    // The name, in parentheses, may hold anything; the fields after it are plain. The 22nd is the time of birth.
    const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return fields[0] === 'Z' ? undefined : fields[19];
  } catch {
    return fromProcessList(pid);
  }
}

/**
 * @param {number} pid process number
 * @returns {boolean} whether some process has it
 */
export function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}

/**
 * @param {number} pid process number, on a system without /proc
 * @returns {string | undefined} when it began
 */
function fromProcessList(pid) {
  try {
    return execFileSync('ps', ['-o', 'lstart=', '-p', String(pid)], { encoding: 'utf8' }).trim() || undefined;
  } catch {
    return undefined;
  }
}
