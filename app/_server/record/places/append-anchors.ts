import 'server-only';
import { open } from 'node:fs/promises';

/**
 * Adds lines to a file, made when it is missing, and returns once the disk has them.
 *
 * @param path    of the file
 * @param lines   whole lines
 * @throws        when the file cannot be written
 */
export async function appendAnchors(path: string, lines: string): Promise<void> {
  const file = await open(path, 'a', 0o640);
  try {
    await file.appendFile(lines);
    await file.sync();
  } finally {
    await file.close();
  }
}
