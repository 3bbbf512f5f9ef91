// @ts-check
// Starts a PostgreSQL program as the person it must run as.
import { spawn } from 'node:child_process';

/** The program needs little from its surroundings, and nothing of PGHOST, PGDATA and their like. */
const ENVIRONMENT = /** @type {NodeJS.ProcessEnv} */ (
  /** @type {unknown} */ ({ PATH: '/usr/local/bin:/usr/bin:/bin', LC_ALL: 'C' })
);

/**
 * @param {import('./person.mjs').Person} person as whom
 * @param {string} file path of the program
 * @param {string[]} args words for it
 * @param {import('node:child_process').SpawnOptions} [options] further options
 * @returns {import('node:child_process').ChildProcess} the process
 */
export function spawnAs({ wrapper, identity }, file, args, options = {}) {
  const [first = file, ...rest] = [...wrapper, file, ...args];
  return spawn(first, rest, { env: ENVIRONMENT, cwd: '/', ...identity, ...options });
}

/**
 * @param {import('./person.mjs').Person} person as whom
 * @param {string} file path of the program
 * @param {string[]} args words for it
 * @returns {Promise<{ status: number, output: string }>} how it ended and what it printed
 */
export function runAs(person, file, args) {
  return new Promise((resolve) => {
    const child = spawnAs(person, file, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    const keep = (/** @type {Buffer} */ words) => {
      output += words.toString('utf8');
    };
    child.stdout?.on('data', keep);
    child.stderr?.on('data', keep);
    child.on('error', (error) => resolve({ status: 1, output: `${output}${error.message}` }));
    child.on('close', (status) => resolve({ status: status ?? 1, output }));
  });
}
