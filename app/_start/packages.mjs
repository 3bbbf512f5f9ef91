// @ts-check
// The packages of the lock file, installed before anything that needs them. Node's own modules only.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { requireRoom, ROOM_FOR } from './disk.mjs';
import { mustRun } from './run-program.mjs';
import { step } from './say.mjs';

/** @typedef {{ version?: string, link?: boolean, optional?: boolean, devOptional?: boolean }} Locked */

/**
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} env environment for npm
 */
export async function installPackages(root, env) {
  if (packagesMatch(root)) return;
  await step('packages: installing what the lock file names (about a minute)', async () => {
    await requireRoom(root, ROOM_FOR.packages);
    // Under `npm start` npm says where it lies; the build needs the tools of development too, whatever NODE_ENV says.
    const npm = env.npm_execpath?.endsWith('.js') ? [env.npm_execpath] : [];
    const file = npm.length > 0 ? process.execPath : 'npm';
    const words = ['ci', '--include=dev', '--no-fund', '--no-audit'];
    await mustRun(
      { file, args: [...npm, ...words], env, cwd: root },
      'The packages could not be installed: the reason is above. Check the network and start again.',
    );
  });
}

/**
 * Whether what lies in `node_modules` is what the lock file names, also after an install that was broken off or done by
 * hand: npm's own record of what it installed is compared, package by package, and each must really be there.
 *
 * @param {string} root the checkout
 * @returns {boolean} true when nothing has to be installed
 */
export function packagesMatch(root) {
  const wanted = lockedIn(join(root, 'package-lock.json'));
  const installed = lockedIn(join(root, 'node_modules/.package-lock.json'));
  if (!wanted || !installed) return false;
  return Object.entries(wanted).every(([path, locked]) => {
    if (path === '' || locked.link) return true;
    const found = installed[path];
    // Optional packages are for other machines than this one, unless npm chose to install them.
    if (!found) return locked.optional === true || locked.devOptional === true;
    return found.version === locked.version && existsSync(join(root, path, 'package.json'));
  });
}

/**
 * @param {string} path of a lock file
 * @returns {Record<string, Locked> | undefined} its packages by place; nothing when there is no such file
 */
function lockedIn(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages;
  } catch {
    return undefined;
  }
}
