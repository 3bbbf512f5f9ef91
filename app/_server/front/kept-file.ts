import 'server-only';
import { randomUUID } from 'node:crypto';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';

/** What a file holds; nothing when it is not there. */
export function readKept(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return undefined;
    throw error;
  }
}

/**
 * Writes a file whole or not at all.
 *
 * @param mode   who may read it; 0600 for what nobody else may
 */
export function keepFile(path: string, text: string, mode: number): void {
  const aside = `${path}.${randomUUID()}`;
  writeFileSync(aside, text, { mode });
  renameSync(aside, path);
}
