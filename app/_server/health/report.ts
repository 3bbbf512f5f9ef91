import 'server-only';
import { findLastSighting } from '#data/worker-sightings';
import { now } from '../clock';
import { logError } from '../log';
import { isNextPartThere } from '../readings/keep-parts';

/** ms without a sign after which a worker is late: it gives one every minute. */
const LATE_MS = 150_000;

/** Whether the parts of Holdfast are there. */
export interface Health {
  web: 'up';
  database: 'up' | 'down';
  worker: 'up' | 'late' | 'never seen' | 'unknown';
  /** Instant of the worker's last sign, ISO 8601 in UTC. */
  workerLastSeen: string | null;
  /** Whether readings of next month have a place to go to; the worker makes it months ahead. */
  readings: 'ready' | 'no part for next month' | 'unknown';
}

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
