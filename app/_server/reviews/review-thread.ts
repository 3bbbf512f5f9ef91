import 'server-only';
import { parentPort } from 'node:worker_threads';
import { reviewSystem } from '#core/review/review-system';
import type { ReviewJob, ThreadMessage } from './compute';

// Runs in a thread of its own: computes one review after another for the process that started it.
const say = (message: ThreadMessage) => parentPort?.postMessage(message);

parentPort?.on('message', ({ facility, system: key, on }: ReviewJob) => {
  try {
    const system = facility.systems.find((one) => one.key === key);
    if (!system) throw new Error(`No system "${key}" in the facility to review`);
    say({ review: reviewSystem(facility, system, on, (done, of) => say({ done, of }), true) });
  } catch (error) {
    say({ broke: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
