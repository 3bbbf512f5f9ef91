// @ts-check
// The two folders everything else is found from.
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '');

/**
 * @param {NodeJS.ProcessEnv} environment whose HOLDFAST_DATA names another folder
 * @returns {string} the folder of the database, its password and the logs
 */
export function dataFolder(environment) {
  return resolve(ROOT, environment.HOLDFAST_DATA || '.data');
}
