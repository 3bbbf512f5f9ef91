// @ts-check
// As whom PostgreSQL runs. It refuses to run as root, so root has to become somebody else for it.
import { execFileSync, spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { Failure } from '../failure.mjs';

/** The number of `nobody` inside the user namespace. */
const NOBODY = '65534';
const NAMESPACE = ['--user', `--map-user=${NOBODY}`, `--map-group=${NOBODY}`];

/**
 * @typedef {object} Person
 * @property {string[]} wrapper words that go before the program on the command line
 * @property {{ uid: number, gid: number } | undefined} identity to start the program with, and to own its files
 */

/**
 * - Anybody but root: as they are.
 * - Root over a folder that somebody else owns: as that owner.
 * - Root otherwise: as `nobody` of a user namespace of its own. Files stay root's, no account is made, and it works
 *   under a home that others cannot enter.
 * - Root where such namespaces are forbidden, as in some containers: as the account `postgres` or `nobody`.
 *
 * @param {string} folder of the database, which may not exist yet
 * @param {Situation} [situation] who asks; the machine itself when left out
 * @returns {Person} as whom to run
 * @throws {Failure} when root cannot become anybody
 */
export function personFor(folder, situation = machine) {
  if (situation.uid() !== 0) return { wrapper: [], identity: undefined };
  const owner = situation.ownerOf(folder);
  if (owner && owner.uid !== 0) return { wrapper: [], identity: owner };
  if (situation.mayUnshare()) return { wrapper: ['unshare', ...NAMESPACE], identity: undefined };
  const identity = situation.account('postgres') ?? situation.account('nobody');
  if (identity) return { wrapper: [], identity };
  throw new Failure('PostgreSQL may not run as root and no other account was found: start Holdfast as another user.');
}

/**
 * @typedef {object} Situation
 * @property {() => number | undefined} uid number of the user who runs Holdfast
 * @property {(folder: string) => { uid: number, gid: number } | undefined} ownerOf an existing database
 * @property {() => boolean} mayUnshare whether user namespaces are allowed
 * @property {(name: string) => { uid: number, gid: number } | undefined} account numbers of an account, if it exists
 */

/** @type {Situation} */
const machine = {
  uid: () => process.getuid?.(),
  ownerOf: (folder) => statSync(join(folder, 'PG_VERSION'), { throwIfNoEntry: false }),
  mayUnshare: () => spawnSync('unshare', [...NAMESPACE, 'true']).status === 0,
  account: (name) => {
    try {
      const ask = (/** @type {string} */ flag) => Number(execFileSync('id', [flag, name], { encoding: 'utf8' }));
      return { uid: ask('-u'), gid: ask('-g') };
    } catch {
      return undefined;
    }
  },
};
