import 'server-only';
import { database } from './client';

/**
 * Lets go of jobs whose worker is gone: one that was killed keeps its job locked, and the library frees it only after hours.
 * A worker says every minute that it is there, so a lock of one that has not said so for longer belongs to nobody.
 *
 * @param seenSince   workers seen since this instant are there
 * @returns           names of those that are gone
 */
export async function freeJobsOfGone(seenSince: Date): Promise<string[]> {
  const instant = seenSince.toISOString();
  const gone = await database().$queryRaw<{ worker: string }[]>`
    SELECT DISTINCT j.locked_by AS worker FROM graphile_worker._private_jobs j
     WHERE j.locked_by IS NOT NULL AND j.locked_at < ${instant}::timestamptz
       AND NOT EXISTS (SELECT FROM worker_sighting s WHERE s.worker = j.locked_by AND s.seen_at >= ${instant}::timestamptz)`;
  const names = gone.map(({ worker }) => worker);
  if (names.length > 0) await database().$executeRaw`SELECT graphile_worker.force_unlock_workers(${names}::text[])`;
  return names;
}
