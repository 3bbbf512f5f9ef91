// @ts-check
// Holdfast as a person would start it, in the folder of the run, which is gone afterwards; what it prints is kept there,
// since it says how one gets in: `node e2e/_support/serve.mjs --port N`.
import { spawn } from 'node:child_process';
import { appendFileSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const STARTER = fileURLToPath(new URL('../../app/_start/start.mjs', import.meta.url));
const { DATABASE_URL: _, HOLDFAST_ADDRESS: __, HOLDFAST_E2E_FOLDER: folder, ...env } = process.env;
if (!folder) throw new Error('The configuration of the tests names the folder of the run in HOLDFAST_E2E_FOLDER.');
const data = join(folder, 'data');
mkdirSync(data, { recursive: true });

const holdfast = spawn(process.execPath, [STARTER, ...process.argv.slice(2)], {
  // The longer look would take minutes of a core beside the browser.
  env: { ...env, HOLDFAST_DATA: data, HOLDFAST_LONGER_LOOK: 'off' },
  stdio: ['ignore', 'pipe', 'inherit'],
});
holdfast.stdout.on('data', (words) => {
  process.stdout.write(words);
  appendFileSync(join(folder, 'printed.txt'), words);
});
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => holdfast.kill(signal));
holdfast.on('exit', (code) => {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  process.exit(code ?? 1);
});
