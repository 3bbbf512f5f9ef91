// @ts-check
// Holdfast as a person would start it, over a data folder that is gone afterwards: `node e2e/_support/serve.mjs --port N`.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const STARTER = fileURLToPath(new URL('../../app/_start/start.mjs', import.meta.url));
const data = mkdtempSync(join(tmpdir(), 'holdfast-e2e-'));
const { DATABASE_URL: _, ...env } = process.env;

const holdfast = spawn(process.execPath, [STARTER, ...process.argv.slice(2)], {
  env: { ...env, HOLDFAST_DATA: data },
  stdio: 'inherit',
});
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => holdfast.kill(signal));
holdfast.on('exit', (code) => {
  rmSync(data, { recursive: true, force: true, maxRetries: 5 });
  process.exit(code ?? 1);
});
