import 'server-only';
import { parentPort } from 'node:worker_threads';
import { demandOf } from '#core/review/people/demand-of';
import { emptyCache, type ReviewCache } from '#core/review/review-cache';
import { reviewPiece, reviewSystem } from '#core/review/review-system';
import type { ReviewJob, ThreadMessage } from './compute';

/** Systems whose last runs are kept: those of a site that somebody is at work on. */
const KEPT = 4;

/** By site and system, the last used one last. */
const caches = new Map<string, ReviewCache>();

/** What the water of a system did in its last review, so that a change of people or papers costs no run of the model. */
function cacheOf({ facility, system }: ReviewJob): ReviewCache {
  const id = `${facility.site.key} ${system}`;
  const cache = caches.get(id) ?? emptyCache();
  caches.delete(id);
  caches.set(id, cache);
  for (const old of [...caches.keys()].slice(0, -KEPT)) caches.delete(old);
  return cache;
}

// Runs in a thread of its own: computes one review after another for the process that started it.
const say = (message: ThreadMessage) => parentPort?.postMessage(message);

parentPort?.on('message', (job: ReviewJob) => {
  const { facility, system: key, on, piece, wantsDemand } = job;
  try {
    const system = facility.systems.find((one) => one.key === key);
    if (!system) throw new Error(`No system "${key}" in the facility to review`);
    const told = (done: number, of: number) => say({ done, of });
    const cache = cacheOf(job);
    const review =
      piece === undefined
        ? reviewSystem(facility, system, on, told, true, cache)
        : reviewPiece(facility, system, on, piece, cache);
    say({ review: wantsDemand ? { ...review, demand: demandOf(facility, system, on, review, cache) } : review });
  } catch (error) {
    say({ broke: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
