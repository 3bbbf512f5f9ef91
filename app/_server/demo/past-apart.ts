import 'server-only';
import { once } from 'node:events';
import type { Facility } from '#core/facility/facility';
import type { Past } from '../../../seed/past/past';
import { startThread } from '../apart/start-thread';

/** Whose past is to be made. */
export interface PastJob {
  /** With its dates as of `today`. */
  facility: Facility;
  /** ISO date at the site. */
  today: string;
  /** ms since 1970, on that day. */
  nowMs: number;
}

/** What the thread says: the past, or why there is none. */
export type PastMessage = { past: Past } | { broke: string };

/** Makes the past of a site. @throws what making it threw */
export type MakePast = (facility: Facility, today: string, nowMs: number) => Promise<Past>;

/** What runs in the thread. */
const THREAD = 'app/_server/demo/past-thread.ts';

/**
 * Lets somebody make pasts in a thread of its own, which takes seconds: the process goes on answering meanwhile.
 *
 * @param work   what needs them; the thread ends with it
 * @throws       what the work threw, or that the thread broke
 */
export async function withPasts<T>(work: (pastOf: MakePast) => Promise<T>): Promise<T> {
  const thread = startThread(THREAD);
  const ended = once(thread, 'exit').then(([code]): never => {
    throw new Error(`the thread of a past ended with ${String(code)}`);
  });
  ended.catch(() => undefined);
  try {
    return await work(async (facility, today, nowMs) => {
      const told = once(thread, 'message');
      thread.postMessage({ facility, today, nowMs } satisfies PastJob);
      const [said] = (await Promise.race([told, ended])) as [PastMessage];
      if ('broke' in said) throw new Error(said.broke);
      return said.past;
    });
  } finally {
    await thread.terminate();
  }
}
