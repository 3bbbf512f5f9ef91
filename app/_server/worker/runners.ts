import 'server-only';
import { EventEmitter } from 'node:events';
import type { WorkerEvents } from 'graphile-worker';
import { freeJobsOfGone } from '#data/gone-workers';
import { recordSighting } from '#data/worker-sightings';
import { now } from '../clock';
import { logInfo } from '../log';

/** ms a runner that ended is remembered. */
const DAY_MS = 86_400_000;
/** ms without a sign after which a runner is gone. It gives one every minute. */
const GONE_MS = 150_000;

/** Names under which the job library locks jobs for this process. */
const running = new Set<string>();

/** What the job library says of its runners: one for each job that may run at once. */
export function runnerEvents(): WorkerEvents {
  const events: WorkerEvents = new EventEmitter();
  events.on('worker:create', ({ worker }) => running.add(worker.workerId));
  events.on('worker:stop', ({ worker }) => running.delete(worker.workerId));
  return events;
}

/** Says that the runners of this process are there, and lets go of what those hold that are not. */
export async function signRunners(): Promise<void> {
  const instant = now();
  const forgetBefore = new Date(instant.getTime() - DAY_MS);
  for (const runner of running) await recordSighting(runner, instant, forgetBefore);
  const gone = await freeJobsOfGone(new Date(instant.getTime() - GONE_MS));
  if (gone.length > 0) logInfo('jobs of workers that are gone were let go', { workers: gone.join(' ') });
}
