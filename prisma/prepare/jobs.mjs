// @ts-check
// The tables of the job library, in a schema of its own that Prisma does not look at. They are made here and not by the
// worker, so that the web process can wake a task before the first worker ever ran.
import { runMigrations } from 'graphile-worker';

/** @param {string} url address of the database */
export async function prepareJobs(url) {
  await runMigrations({ connectionString: url, logger: await quietLogger() });
}

/** @returns {Promise<import('graphile-worker').Logger>} a logger that says nothing: progress is printed step by step */
async function quietLogger() {
  const { Logger } = await import('graphile-worker');
  return new Logger(() => () => undefined);
}
