// @ts-check
// A new, empty database cluster.
import { chmodSync, chownSync, existsSync, mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { diskFull, Failure, speaksOfFullDisk } from '../failure.mjs';
import { binaries } from './binaries.mjs';
import { personFor } from './person.mjs';
import { runAs } from './run-as.mjs';

/**
 * @param {string} folder of the cluster
 * @returns {boolean} whether there is one
 */
export function exists(folder) {
  return existsSync(join(folder, 'PG_VERSION'));
}

/**
 * Made aside and moved into place whole: one that was broken off half-way is never taken for a database.
 *
 * @param {string} folder where it shall lie
 * @param {{ user: string, password: string }} owner of everything in it
 * @param {{ isDurable: boolean, programs?: import('./binaries.mjs').Programs }} care whether it must survive a power cut,
 *   and which PostgreSQL makes it: Holdfast's own when left out
 * @throws {Failure} when PostgreSQL cannot make it
 */
export async function create(folder, { user, password }, { isDurable, programs = binaries() }) {
  const aside = `${folder}.new`;
  const secret = `${folder}.secret`;
  rmSync(aside, { recursive: true, force: true });
  mkdirSync(aside, { mode: 0o700 });
  writeFileSync(secret, password, { mode: 0o600 });
  chmodSync(secret, 0o600);
  const person = personFor(folder);
  if (person.identity) for (const path of [aside, secret]) chownSync(path, person.identity.uid, person.identity.gid);
  try {
    const { status, output } = await runAs(person, programs.initdb, [
      ...['--pgdata', aside, '--username', user, '--pwfile', secret, '--auth', 'scram-sha-256'],
      // One locale on every machine, from PostgreSQL itself: sorting does not change with the system's libraries.
      ...['--encoding', 'UTF8', '--locale', 'C', '--locale-provider', 'builtin', '--builtin-locale', 'C.UTF-8'],
      '--data-checksums',
      ...(isDurable ? [] : ['--no-sync']),
    ]);
    if (status !== 0) throw new Failure(creationFailed(folder, output));
    renameSync(aside, folder);
  } finally {
    rmSync(secret, { force: true });
    // Gone already when all went well; else it gives its room back.
    rmSync(aside, { recursive: true, force: true });
  }
}

/**
 * @param {string} folder where it should lie
 * @param {string} output of initdb
 * @returns {string} the sentence
 */
function creationFailed(folder, output) {
  if (speaksOfFullDisk(output)) return diskFull(folder);
  if (/Permission denied|EACCES/.test(output)) {
    return (
      `PostgreSQL may not run as root, and no other account may enter ${folder}: ` +
      'start Holdfast as an ordinary user, or name a folder open to all in HOLDFAST_DATA.'
    );
  }
  return `${output.trimEnd()}\n\nPostgreSQL could not make its database in ${folder}: the reason is above.`;
}
