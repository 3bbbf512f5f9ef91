import 'server-only';
import { on } from 'node:events';
import type { Worker } from 'node:worker_threads';
import type { Facility } from '#core/facility/facility';
import type { SystemDemand } from '#core/review/people/demand';
import type { SystemReview } from '#core/review/result';
import { startThread } from '../apart/start-thread';

/** What is to be reviewed. */
export interface ReviewJob {
  facility: Facility;
  /** Key of the system. */
  system: string;
  /** ISO date in the site's zone on which tests are judged. */
  on: string;
  /** Key of the only piece of equipment whose own faults are to be reviewed; every fault when left out. */
  piece?: string;
  /** Whether to say as well what its fault cases ask of people. */
  wantsDemand?: true;
}

/** A review, with what its fault cases ask of people where that was asked for. */
export type Computed = SystemReview & { demand?: SystemDemand };

/** What the thread says: how many fault cases of how many are judged, and in the end the review, or why there is none. */
export type ThreadMessage = { done: number; of: number } | { review: Computed } | { broke: string };

/**
 * Computes a review.
 *
 * @param told     called after each fault case with how many are judged and how many there are
 * @param signal   breaks it off
 * @throws         what the computation threw, or that it was broken off
 */
export type Compute = (
  job: ReviewJob,
  told: (done: number, of: number) => void,
  signal: AbortSignal | undefined,
) => Promise<Computed>;

/** What runs in the thread. */
const THREAD = 'app/_server/reviews/review-thread.ts';

/** A thread that has nothing to do: reading the core takes a second, so one is kept for the next review. */
let idle: Worker | undefined;

/** Computes a review in a thread of its own, so that the process goes on answering meanwhile. */
export const computeApart: Compute = async (job, told, signal) => {
  signal?.throwIfAborted();
  const thread = idle ?? startThread(THREAD);
  idle = undefined;
  try {
    const review = await reviewIn(thread, job, told, signal);
    if (idle) void thread.terminate();
    else idle = thread;
    // It must not keep a process alive that has nothing else to do.
    thread.unref();
    return review;
  } catch (error) {
    void thread.terminate();
    throw error;
  }
};

async function reviewIn(
  thread: Worker,
  job: ReviewJob,
  told: (done: number, of: number) => void,
  signal: AbortSignal | undefined,
): Promise<Computed> {
  const heard = new AbortController();
  const until = AbortSignal.any(signal ? [signal, heard.signal] : [heard.signal]);
  thread.ref();
  thread.postMessage(job);
  try {
    for await (const [said] of on(thread, 'message', { signal: until, close: ['exit'] }) as AsyncIterable<
      [ThreadMessage]
    >) {
      if ('review' in said) return said.review;
      if ('broke' in said) throw new Error(said.broke);
      told(said.done, said.of);
    }
  } finally {
    heard.abort();
  }
  throw new Error('the thread of a review ended without a review');
}
