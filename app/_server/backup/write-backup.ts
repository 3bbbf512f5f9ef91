import 'server-only';
import { createWriteStream } from 'node:fs';
import { open, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { writeSnapshot } from '#data/backup/write-snapshot';

/** Readable by its owner alone: a backup holds everything. */
const MODE = 0o600;

/** Ends the name of a backup that is being written. */
export const PART = '.part';

/**
 * Writes a backup of the running database, of all sites at one instant. The file is there whole, and on the disk, or not at
 * all; whatever stood under its name is replaced only then.
 *
 * @param path   where to
 * @param at     the instant
 * @returns      its size in bytes
 */
export async function writeBackup(path: string, at: Date): Promise<number> {
  const aside = join(dirname(path), `.${basename(path)}.${process.pid}${PART}`);
  try {
    const file = createWriteStream(aside, { mode: MODE, flush: true });
    await pipeline(Readable.from(writeSnapshot(at)), createGzip(), file);
    await rename(aside, path);
  } finally {
    // Where it could not be written it may not be there to be removed; the first error is the one that counts.
    await rm(aside, { force: true }).catch(() => undefined);
  }
  await flushFolder(dirname(path));
  return (await stat(path)).size;
}

/** The name of a file stands in its folder, which is written to the disk by itself. */
async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
