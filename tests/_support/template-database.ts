import type { TestProject } from 'vitest/node';
import { throwAwayServer } from '../../app/_start/postgres/throw-away.mjs';
import { makeTemplate } from './make-template.mjs';

declare module 'vitest' {
  interface ProvidedContext {
    /** Address of the server that holds the template, as its owner. */
    databaseServer: string;
  }
}

/**
 * Before the first test that meets a database: the server the whole run shares, or one of this run's own when a few
 * tests are run by hand.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const shared = process.env.HOLDFAST_TEST_SERVER;
  if (shared) {
    project.provide('databaseServer', shared);
    return async () => undefined;
  }
  const server = await throwAwayServer();
  try {
    await makeTemplate(server.url);
  } catch (error) {
    await server.remove();
    throw error;
  }
  project.provide('databaseServer', server.url);
  return server.remove;
}
