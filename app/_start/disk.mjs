// @ts-check
// Room on the disk is asked about before a step that needs much, since a full disk in its middle is harder to explain.
import { statfs } from 'node:fs/promises';
import { diskFull, Failure } from './failure.mjs';

const MEBIBYTE = 1024 * 1024;

/** MiB each step may take: measured (packages 1019 MB, a new database 50 MB, a build 350 MB) and rounded up. */
export const ROOM_FOR = { packages: 1300, database: 150, build: 500, running: 50 };

/**
 * @param {string} folder an existing folder on the disk in question
 * @param {number} neededMiB MiB that must be free
 * @throws {Failure} when less is free
 */
export async function requireRoom(folder, neededMiB) {
  const { bavail, bsize } = await statfs(folder);
  const refusal = roomRefusal(folder, (bavail * bsize) / MEBIBYTE, neededMiB);
  if (refusal) throw new Failure(refusal);
}

/**
 * @param {string} folder on the disk in question
 * @param {number} freeMiB MiB free for ordinary programs
 * @param {number} neededMiB MiB needed
 * @returns {string | undefined} the sentence when it is too little
 */
export function roomRefusal(folder, freeMiB, neededMiB) {
  if (freeMiB >= neededMiB) return undefined;
  if (freeMiB < 1) return diskFull(folder);
  const free = Math.floor(freeMiB);
  return `The disk that holds ${folder} has ${free} MiB left, and ${neededMiB} MiB are needed: make room and start again.`;
}
