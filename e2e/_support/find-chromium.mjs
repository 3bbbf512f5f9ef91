// @ts-check
// Prints the path of a Chromium that runs: the one named in CHROMIUM, else the system's, else the one that comes in an
// npm package. Ends with 1 and one sentence when there is none.
import { spawnSync } from 'node:child_process';
import { mkdirSync, rmSync } from 'node:fs';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';

const SYSTEM = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * @param {string} file path or name of a browser
 * @returns {boolean} whether it starts
 */
function runs(file) {
  return spawnSync(file, ['--version']).status === 0;
}

/** @returns {Promise<string | undefined>} path of the packaged one, unpacked for this user, if it runs */
async function packaged() {
  // A folder of each user's own: what another user unpacked could not be run, nor replaced.
  const home = join(tmpdir(), `holdfast-chromium-${userInfo().uid}`);
  mkdirSync(home, { recursive: true, mode: 0o700 });
  process.env.TMPDIR = home;
  const { default: chromium } = await import('@sparticuz/chromium');
  const path = await chromium.executablePath();
  if (runs(path)) return path;
  // It may have been unpacked only half-way by a run that was killed.
  rmSync(home, { recursive: true, force: true });
  mkdirSync(home, { recursive: true, mode: 0o700 });
  const again = await chromium.executablePath();
  return runs(again) ? again : undefined;
}

/** @returns {string | undefined} the system's, installed now, where this user may install */
function installed() {
  if (process.getuid?.() !== 0) return undefined;
  spawnSync('apt-get', ['install', '-y', 'chromium'], { stdio: ['ignore', 'ignore', 'inherit'] });
  return SYSTEM.find(runs);
}

const named = process.env.CHROMIUM;
const found = named ? [named].find(runs) : (SYSTEM.find(runs) ?? (await packaged()) ?? installed());
if (found) {
  process.stdout.write(found);
} else {
  console.error(
    named
      ? `CHROMIUM names ${named}, which does not start.`
      : 'No Chromium runs here: install one, or the libraries libnss3 and libnspr4 for the packaged one.',
  );
  process.exitCode = 1;
}
