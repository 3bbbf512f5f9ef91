// @ts-check
// Whether sources changed since something was made from them: a hash over names and contents, kept beside the result.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * @param {string} root the checkout
 * @param {string[]} sources files and folders in it; one that is missing counts as empty
 * @param {(path: string) => boolean} [counts] whether a file matters; all do when left out
 * @returns {string} the hash, in hexadecimal figures
 */
export function fingerprint(root, sources, counts = () => true) {
  const hash = createHash('sha256');
  for (const source of sources) {
    for (const path of filesIn(root, source)) {
      if (counts(path))
        hash
          .update(`${path}\0`)
          .update(readFileSync(join(root, path)))
          .update('\0');
    }
  }
  return hash.digest('hex');
}

/**
 * @param {string} root the checkout
 * @param {string} source a file or folder in it
 * @returns {string[]} the paths of all files in it, sorted
 */
function filesIn(root, source) {
  const found = statSync(join(root, source), { throwIfNoEntry: false });
  if (!found) return [];
  if (!found.isDirectory()) return [source];
  const entries = readdirSync(join(root, source)).sort();
  return entries.flatMap((entry) => filesIn(root, `${source}/${entry}`));
}

/**
 * @param {string} stamp path of the file that keeps the hash
 * @returns {string | undefined} the kept hash
 */
export function keptFingerprint(stamp) {
  try {
    return readFileSync(stamp, 'utf8').trim();
  } catch {
    return undefined;
  }
}

/**
 * @param {string} stamp path of the file that keeps the hash
 * @param {string} print the hash
 */
export function keepFingerprint(stamp, print) {
  writeFileSync(stamp, `${print}\n`);
}
