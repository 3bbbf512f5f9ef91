// @ts-check
// What secrets of others are sealed with, where whoever looks after the machine gave none.
import { randomBytes } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { makeDataFolder } from './places.mjs';

/** Characters under which it is none. */
const SHORTEST = 32;

/**
 * The same at every start: what was sealed with one is read with no other. It is in no database and no backup.
 *
 * @param {string} data folder it is kept in, for its owner alone
 * @returns {string} the secret
 */
export function keptSecret(data) {
  const path = join(data, 'secret');
  const kept = read(path);
  if (kept.length >= SHORTEST) return kept;
  makeDataFolder(data);
  const secret = randomBytes(32).toString('base64url');
  writeFileSync(path, `${secret}\n`, { mode: 0o600 });
  return secret;
}

/** @param {string} path */
function read(path) {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return '';
  }
}
