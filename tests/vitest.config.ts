import { defineConfig } from 'vitest/config';

const ROOT = new URL('..', import.meta.url).pathname;
/** Folders whose tests meet a real database, of which every file gets a fresh copy. */
const DATABASE = ['tests/data/**', 'tests/server/**', 'tests/gate/**'];
/** Folder of the tests that start and kill servers: a server each, one file at a time. */
const START = ['tests/start/**'];
/** Folder of the tests about the code itself, which run whole checkers over it. */
const HOUSE = ['tests/house/**'];

// `server-only` throws outside the web server; tests and commands are servers too, so it becomes an empty module here.
const shared = {
  root: ROOT,
  resolve: { alias: { 'server-only': new URL('./_support/empty.ts', import.meta.url).pathname } },
};
// A worker that a test starts backs nothing up of its own accord: the folder would be that of the checkout.
const limits = { testTimeout: 60_000, hookTimeout: 120_000, env: { HOLDFAST_BACKUP_FOLDER: 'off' } };

export default defineConfig({
  ...shared,
  test: {
    projects: [
      {
        ...shared,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: [...DATABASE, ...START, ...HOUSE],
          // What is tried here has no state of its own to leave behind, and loading it anew for each file costs more than
          // the tests themselves.
          isolate: false,
          pool: 'threads',
          ...limits,
        },
      },
      { ...shared, test: { name: 'house', include: HOUSE.map((folder) => `${folder}/*.test.ts`), ...limits } },
      {
        ...shared,
        test: {
          name: 'database',
          include: DATABASE.map((folder) => `${folder}/*.test.ts`),
          globalSetup: ['tests/_support/template-database.ts'],
          ...limits,
        },
      },
      {
        ...shared,
        test: {
          name: 'start',
          include: START.map((folder) => `${folder}/*.test.ts`),
          globalSetup: ['tests/_support/template-database.ts'],
          fileParallelism: false,
          ...limits,
        },
      },
    ],
  },
});
