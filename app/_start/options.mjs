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

/** Ports above 1023 that no browser fetches from: Fetch Standard, section "Port blocking" (bad ports), from memory. */
const REFUSED = new Set([
  1719, 1720, 1723, 2049, 3659, 4045, 4190, 5060, 5061, 6000, 6566, 6665, 6666, 6667, 6668, 6669, 6679, 6697, 10_080,
]);

/**
 * @param {string} said a port in figures
 * @returns {number} 1 to 65535
 */
function asPort(said) {
  const port = Number(said);
  if (REFUSED.has(port))
    throw new Failure(`Browsers open no page on port ${port}, which is another service's: choose another.`);
  if (Number.isInteger(port) && port >= 1 && port <= 65_535) return port;
  throw new Failure(`A port is a whole number from 1 to 65535, not "${said}".`);
}
