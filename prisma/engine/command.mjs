// @ts-check
// How Prisma's command line is started: as which file, with which words, in which environment.
import { accessSync, chmodSync, constants } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

const ENGINE = fileURLToPath(new URL('./schema-engine.mjs', import.meta.url));
const CONFIG = fileURLToPath(new URL('../../.config/prisma.ts', import.meta.url));

/**
 * @param {string[]} words what follows `prisma` on the command line
 * @param {NodeJS.ProcessEnv} [surroundings] environment to start from; that of this process when left out
 * @param {string} [config] path of Prisma's configuration; that of Holdfast when left out
 * @returns {{ file: string, args: string[], env: NodeJS.ProcessEnv }} what to spawn
 */
export function prismaCommand(words, surroundings = process.env, config = CONFIG) {
  makeExecutable(ENGINE);
  const prisma = createRequire(import.meta.url).resolve('prisma/build/index.js');
  return {
    file: process.execPath,
    args: [prisma, ...words, '--config', config],
    env: {
      ...surroundings,
      PRISMA_SCHEMA_ENGINE_BINARY: ENGINE,
      // The engine starts by its first line, which looks for `node` on the path: let it find this very one.
      PATH: `${dirname(process.execPath)}${delimiter}${surroundings.PATH ?? ''}`,
      // Nothing is looked up or reported over the network.
      CHECKPOINT_DISABLE: '1',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
    },
  };
}

/**
 * A copy unpacked from an archive may have lost the mark.
 *
 * @param {string} path of a file that must be executable
 */
function makeExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
  } catch {
    chmodSync(path, 0o755);
  }
}
