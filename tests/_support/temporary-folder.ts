import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/**
 * @returns   a folder that is gone after the last test of the calling file
 */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(realpathSync(tmpdir()), 'holdfast-folder-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }));
  return folder;
}
