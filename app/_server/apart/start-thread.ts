import 'server-only';
import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';

/** Rooms of the server open to a thread as they do to the process it belongs to. */
const LIKE_THE_PROCESS = ['--conditions=react-server'];

/** What a thread reads first, from the disk as it is by whatever process starts it: the pages' bundle must not take it in. */
const START = 'app/_server/apart/thread-start.mjs';

/** MB for what is new: much of what a thread makes lives for a while, and is looked through less often so. */
const YOUNG_MB = 96;

/**
 * Starts a thread of its own for work that would keep a process from answering.
 *
 * @param file   TypeScript that listens to the thread's messages, by its path from the top of the tree
 */
export function startThread(file: string): Worker {
  const start = resolve(/* turbopackIgnore: true */ process.cwd(), START);
  return new Worker(/* turbopackIgnore: true */ start, {
    execArgv: LIKE_THE_PROCESS,
    workerData: file,
    resourceLimits: { maxYoungGenerationSizeMb: YOUNG_MB },
  });
}
