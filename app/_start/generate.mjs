// @ts-check
// The database client, generated from the schema when the schema or Prisma changed.
import { join } from 'node:path';
import { fingerprint, keepFingerprint, keptFingerprint } from './fingerprint.mjs';
import { mustRun } from './run-program.mjs';
import { step } from './say.mjs';

/**
 * @param {string} root the checkout
 * @param {NodeJS.ProcessEnv} env environment for Prisma
 */
export async function generateClient(root, env) {
  const stamp = join(root, 'prisma/generated/.made-from');
  const print = fingerprint(root, ['prisma/schema.prisma', 'node_modules/prisma/package.json']);
  if (keptFingerprint(stamp) === print) return;
  await step('database client: generating', async () => {
    await mustRun(
      { file: process.execPath, args: [join(root, 'prisma/engine/run.mjs'), 'generate'], env, cwd: root },
      'The database client could not be generated: the reason is above.',
    );
    keepFingerprint(stamp, print);
  });
}
