// @ts-check
// Whether two descriptions of the database say the same. Exit code 0 alone is not believed: a panic of the engine once
// ended that way, so Prisma's own words are required too.
import { spawnSync } from 'node:child_process';
import { prismaCommand } from './command.mjs';

const WORDS = 'No difference detected';

/** @typedef {{ same: boolean, why: string }} Verdict */

/**
 * @param {{ status: number | null, output: string }} ended how `prisma migrate diff --exit-code` ended and what it printed
 * @returns {Verdict} `same` only when it said so in words and with exit code 0
 */
export function judgeDifference({ status, output }) {
  if (status === 0 && output.includes(WORDS)) return { same: true, why: WORDS };
  if (status === 0) return { same: false, why: `It ended with 0 but never said "${WORDS}":\n${output}` };
  if (status === 2) return { same: false, why: `There is a difference:\n${output}` };
  return { same: false, why: `It could not compare (exit code ${status}):\n${output}` };
}

/**
 * Asks Prisma to compare.
 *
 * @param {string[]} sides for instance `['--from-migrations', 'prisma/migrations', '--to-schema', 'prisma/schema.prisma']`
 * @param {NodeJS.ProcessEnv} [surroundings] environment, whose DATABASE_URL says where the shadow database may be made
 * @returns {Verdict} whether the sides are the same, and Prisma's words
 */
export function compare(sides, surroundings = process.env) {
  const { file, args, env } = prismaCommand(['migrate', 'diff', ...sides, '--exit-code'], surroundings);
  const { status, stdout, stderr } = spawnSync(file, args, { env, encoding: 'utf8' });
  return judgeDifference({ status, output: `${stdout}${stderr}` });
}
