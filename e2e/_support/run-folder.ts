import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Folder of one run, gone when Holdfast has stopped: its data, what it printed, and the browser that is signed in. */
export function runFolder(): string {
  process.env.HOLDFAST_E2E_FOLDER ??= mkdtempSync(join(tmpdir(), 'holdfast-e2e-'));
  return process.env.HOLDFAST_E2E_FOLDER;
}

/** Data folder of the Holdfast that is tested. */
export function dataFolder(): string {
  return join(runFolder(), 'data');
}

/** What the start has printed so far. */
export function printedFile(): string {
  return join(runFolder(), 'printed.txt');
}

/** The browser of whoever set Holdfast up, as Playwright keeps it. */
export function signedInFile(): string {
  return join(runFolder(), 'signed-in.json');
}
