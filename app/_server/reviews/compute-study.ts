import 'server-only';
import type { SystemReview } from '#core/review/result';
import type { Study } from '#core/review/study';
import { askThread } from '../apart/ask-thread';
import { startThread } from '../apart/start-thread';
import type { ReviewJob } from './compute';

/** What is to be studied: a system and what its review says. */
export interface StudyJob extends ReviewJob {
  review: SystemReview;
}

/**
 * Computes a study.
 *
 * @param told     called as it goes on with how many parts are done and how many there are
 * @param signal   breaks it off
 * @throws         what the computation threw, or that it was broken off
 */
export type ComputeStudy = (
  job: StudyJob,
  told: (done: number, of: number) => void,
  signal: AbortSignal,
) => Promise<Study>;

/** What runs in the thread. */
const THREAD = 'app/_server/reviews/study-thread.ts';

/** Computes a study in a thread of its own, which ends with it. */
export const computeStudyApart: ComputeStudy = async (job, told, signal) => {
  signal.throwIfAborted();
  const thread = startThread(THREAD);
  try {
    return await askThread<Study>(thread, job, told, signal);
  } finally {
    void thread.terminate();
  }
};
