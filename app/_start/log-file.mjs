// @ts-check
// Logs lie in the data folder. One that has grown long is put aside at a start, in place of the one before it.
import { renameSync, statSync } from 'node:fs';

/** bytes */
const LONG = 10 * 1024 * 1024;

/** @param {string} path of a log file */
export function keepLogShort(path) {
  const size = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
  if (size > LONG) renameSync(path, `${path}.old`);
}
