// @ts-check
// The web pages, built when a source changed.
import { rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { requireRoom, ROOM_FOR } from './disk.mjs';
import { fingerprint, keepFingerprint, keptFingerprint } from './fingerprint.mjs';
import { mustRun } from './run-program.mjs';
import { step } from './say.mjs';

const SOURCES = [
  'app',
  'proxy.ts',
  'prisma/schema.prisma',
  'package.json',
  'package-lock.json',
  'next.config.js',
  'tsconfig.json',
];

/**
 * A build that fails leaves nothing to start: it removes the former one first, and the sentence says so.
 *
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} env environment for the build
 */
export async function buildPages(root, env) {
  const stamp = join(root, '.next/made-from');
  const print = fingerprint(root, SOURCES, (path) => !path.startsWith('app/_start/'));
  if (keptFingerprint(stamp) === print) return;
  await step('pages: building (about half a minute)', async () => {
    await requireRoom(root, ROOM_FOR.build);
    rmSync(stamp, { force: true });
    await mustRun(
      { file: process.execPath, args: [nextProgram(), 'build'], env: { ...env, NODE_ENV: 'production' }, cwd: root },
      'The pages could not be built, and the former build is gone with it: mend the error above and start again.',
    );
    keepFingerprint(stamp, print);
  });
}

/** @returns {string} path of Next's command line */
export function nextProgram() {
  return createRequire(import.meta.url).resolve('next/dist/bin/next');
}
