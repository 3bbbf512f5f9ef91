// @ts-check
// The two folders everything else is found from.
import { existsSync, mkdirSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
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

/**
 * Closed to others; the folders above it, when they are made too, are left as the system makes folders.
 *
 * @param {string} data folder to make when it is missing
 */
export function makeDataFolder(data) {
  if (existsSync(data)) return;
  mkdirSync(dirname(data), { recursive: true });
  mkdirSync(data, { recursive: true, mode: 0o700 });
}
