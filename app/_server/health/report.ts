import 'server-only';
import type { Health } from '#shape/api/health';
import { findLastSighting } from '#data/worker-sightings';
import { now } from '../clock';
import { logError } from '../log';
import { isNextPartThere } from '../readings/keep-parts';

/** ms without a sign after which a worker is late: it gives one every minute. */
const LATE_MS = 150_000;

/**
 * Asks the database, and through it when a worker last gave a sign.
 *
 * @returns   what is there and what is not; the reason is in the log
 */
export async function reportHealth(): Promise<Health> {
  try {
    const [seen, isReady] = await Promise.all([findLastSighting(), isNextPartThere()]);
    const readings = isReady ? 'ready' : 'no part for next month';
    const worker = seen === null ? 'never seen' : now().getTime() - seen.getTime() > LATE_MS ? 'late' : 'up';
    return { web: 'up', database: 'up', worker, workerLastSeen: seen?.toISOString() ?? null, readings };
  } catch (error) {
    logError('database does not answer', error);
    return { web: 'up', database: 'down', worker: 'unknown', workerLastSeen: null, readings: 'unknown' };
  }
}
