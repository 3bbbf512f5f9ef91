import { execFileSync } from 'node:child_process';
import { join } from 'node:path';

/**
 * @returns   path of a Chromium that runs; looked for once a run, since every process of the runner asks
 */
export function chromiumPath(): string {
  process.env.HOLDFAST_E2E_CHROMIUM ??= execFileSync(
    process.execPath,
    [join(import.meta.dirname, 'find-chromium.mjs')],
    {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'inherit'],
    },
  );
  return process.env.HOLDFAST_E2E_CHROMIUM;
}

/** Runs headless as root too, and looks nothing up on the network. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
  '--no-first-run',
];
