import 'server-only';
import { parentPort } from 'node:worker_threads';
import { pastOf } from '../../../seed/past/past';
import type { PastJob, PastMessage } from './past-apart';

// Runs in a thread of its own: makes one past after another for the process that started it.
const say = (message: PastMessage) => parentPort?.postMessage(message);

parentPort?.on('message', ({ facility, today, nowMs }: PastJob) => {
  try {
    say({ past: pastOf(facility, today, nowMs) });
  } catch (error) {
    say({ broke: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
