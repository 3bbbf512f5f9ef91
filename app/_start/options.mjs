// @ts-check
// What may be said on the command line and in the environment.
import { parseArgs } from 'node:util';
import { Failure } from './failure.mjs';

const DEFAULT_PORT = 3200;

/**
 * @typedef {object} Options
 * @property {number} port of the web process
 * @property {boolean} demo whether to load the demo
 * @property {boolean} tls whether other machines are let in, encrypted
 * @property {string | undefined} databaseUrl a database of the person's own
 * @property {string | undefined} databaseOwnerUrl the same as the owner of its tables, where that is another account
 */

/**
 * @param {string[]} words what follows `npm start --`
 * @param {NodeJS.ProcessEnv} environment where an empty string means that nothing was said
 * @returns {Options} what to do
 * @throws {Failure} at a word or number that means nothing here
 */
export function readOptions(words, environment) {
  const { port, demo, tls } = parseWords(words);
  return {
    port: asPort(port ?? (environment.PORT || String(DEFAULT_PORT))),
    demo: demo === true,
    tls: tls === true,
    databaseUrl: environment.DATABASE_URL || undefined,
    databaseOwnerUrl: environment.DATABASE_OWNER_URL || undefined,
  };
}

/**
 * @param {string[]} words what follows `npm start --`
 * @returns {{ port?: string, demo?: boolean, tls?: boolean }} the flags that were given
 */
function parseWords(words) {
  try {
    const flag = /** @type {const} */ ({ type: 'boolean' });
    return parseArgs({ args: words, options: { port: { type: 'string' }, demo: flag, tls: flag } }).values;
  } catch {
    throw new Failure(`Holdfast starts with --port N, --tls and --demo, and knows nothing of: ${words.join(' ')}`);
  }
}

/**
 * @param {string} said a port in figures
 * @returns {number} 1 to 65535
 */
function asPort(said) {
  const port = Number(said);
  if (Number.isInteger(port) && port >= 1 && port <= 65_535) return port;
  throw new Failure(`A port is a whole number from 1 to 65535, not "${said}".`);
}
