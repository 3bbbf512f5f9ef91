import 'server-only';
import { constants, setPriority } from 'node:os';
import { parentPort } from 'node:worker_threads';
import type { Study } from '#core/review/study';
import { studySystem } from '#core/review/study-system';
import type { Said } from '../apart/ask-thread';
import { logError } from '../log';
import type { StudyJob } from './compute-study';

// Runs in a thread of its own: computes one study after another for the process that started it.
const say = (message: Said<Study>) => parentPort?.postMessage(message);

// Nobody waits for a study: it takes what time the others leave. On Linux this is of the calling thread alone; elsewhere not tried.
if (process.platform === 'linux') {
  try {
    setPriority(constants.priority.PRIORITY_LOW);
  } catch (error) {
    logError('a study could not be put behind the rest', error);
  }
}

parentPort?.on('message', ({ facility, system: key, on, review }: StudyJob) => {
  try {
    const system = facility.systems.find((one) => one.key === key);
    if (!system) throw new Error(`No system "${key}" in the facility to study`);
    say({ made: studySystem(facility, system, on, review, (done, of) => say({ done, of })) });
  } catch (error) {
    say({ broke: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
});
