// @ts-check
// A server for tests: in a folder of its own under the system's temporary one, quick instead of durable, gone afterwards.
import { chmodSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bornAt } from '../born.mjs';
import { create } from './create.mjs';
import { launch } from './launch.mjs';
import { personFor } from './person.mjs';
import { freePort } from './port.mjs';
import { stop } from './stop.mjs';
import { addressOf, newStored } from './stored.mjs';

const NAME = 'holdfast-test-';
const QUICK = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'max_connections=200'];

/**
 * @param {import('./binaries.mjs').Programs} [programs] another PostgreSQL than Holdfast's own
 * @returns {Promise<{ url: string, remove: () => Promise<void> }>} address of its maintenance database, and its end
 */
export async function throwAwayServer(programs) {
  await removeLeftovers();
  const home = mkdtempSync(join(realpathSync(tmpdir()), NAME));
  writeFileSync(join(home, 'owner.json'), JSON.stringify({ pid: process.pid, born: bornAt(process.pid) }));
  const folder = join(home, 'postgres');
  const remove = () => removeHome(home);
  try {
    if (personFor(folder).identity) chmodSync(home, 0o711);
    const stored = newStored(await freePort());
    await create(folder, stored, { isDurable: false, programs });
    await launch({ folder, log: join(home, 'postgres.log'), stored, settings: QUICK, programs });
    return { url: addressOf(stored, 'postgres'), remove };
  } catch (error) {
    await remove();
    throw error;
  }
}

/** @param {string} home folder to remove, with the server in it */
async function removeHome(home) {
  await stop(join(home, 'postgres'), { isClean: false });
  rmSync(home, { recursive: true, force: true, maxRetries: 5 });
}

/** A test run that was killed left its server behind: whoever comes next clears it away. */
async function removeLeftovers() {
  const parent = realpathSync(tmpdir());
  for (const entry of readdirSync(parent).filter((name) => name.startsWith(NAME))) {
    const home = join(parent, entry);
    if (isAbandoned(home)) await removeHome(home);
  }
}

/**
 * @param {string} home folder of a throw-away server
 * @returns {boolean} whether the process that made it is gone
 */
function isAbandoned(home) {
  try {
    const { pid, born } = JSON.parse(readFileSync(join(home, 'owner.json'), 'utf8'));
    return bornAt(pid) !== born;
  } catch {
    // Not readable: somebody else's, or one that is being made this very moment.
    return false;
  }
}
