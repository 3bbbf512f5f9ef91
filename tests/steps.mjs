// @ts-check
// What `npm test` does: in this order, two steps at a time, none before those it comes `after`. `--fast` leaves out the
// steps marked slow; nothing else is ever left out.

/**
 * @typedef {{ heading: string, command: string[], isSlow?: true, counts?: 'vitest' | 'playwright', after?: string[] }} Step
 */

const vitest = (/** @type {string} */ project) => [
  'vitest',
  'run',
  '--config',
  'tests/vitest.config.ts',
  '--project',
  project,
];

/** Biome colours every letter by itself, also in a file; on a screen it may. */
const plain = process.stdout.isTTY ? [] : ['--colors=off'];

/** @type {Step[]} */
export const STEPS = [
  { heading: 'format and lint', command: ['biome', 'ci', '--config-path=.config', ...plain, '.'] },
  // Writes the declarations that the types need; a build would write them too, but comes later.
  { heading: 'types of the routes', command: ['next', 'typegen'] },
  {
    heading: 'lint that needs types',
    command: ['eslint', '-c', '.config/eslint.config.mjs', 'app', 'tests', 'e2e', 'seed'],
    after: ['types of the routes'],
  },
  { heading: 'types', command: ['tsc', '--noEmit', '-p', 'tsconfig.json'], after: ['types of the routes'] },
  { heading: 'types of the core', command: ['tsc', '--noEmit', '-p', 'app/_core/tsconfig.json'] },
  {
    heading: 'walls',
    command: ['depcruise', '--config', '.config/dependency-cruiser.cjs', 'app', 'seed', 'tests', 'e2e'],
  },
  { heading: 'dead code and packages', command: ['knip', '--config', '.config/knip.json'] },
  { heading: 'schema, migrations and database agree', command: ['node', 'tests/_support/check-schema.mjs'] },
  { heading: 'tests about the code', command: vitest('house'), counts: 'vitest' },
  {
    heading: 'build',
    command: ['node', 'tests/_support/build.mjs'],
    isSlow: true,
    // It writes where these read.
    after: ['lint that needs types', 'types', 'walls', 'dead code and packages', 'tests about the code'],
  },
  {
    heading: 'end to end',
    command: ['playwright', 'test', '-c', 'e2e/playwright.config.ts'],
    isSlow: true,
    counts: 'playwright',
    after: ['build'],
  },
  { heading: 'database tests', command: vitest('database'), counts: 'vitest' },
  { heading: 'unit tests', command: vitest('unit'), counts: 'vitest' },
  { heading: 'start tests', command: vitest('start'), counts: 'vitest' },
];
