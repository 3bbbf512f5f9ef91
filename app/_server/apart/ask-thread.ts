import 'server-only';
import { on } from 'node:events';
import type { Worker } from 'node:worker_threads';

/** What a thread says: how far it is, and in the end what it made, or why there is none. */
export type Said<T> = { done: number; of: number } | { made: T } | { broke: string };

/**
 * Gives a thread something to do and hears it out.
 *
 * @param told     called as it goes on
 * @param signal   breaks it off
 * @returns        what it made
 * @throws         what broke in the thread, that it ended, or that it was broken off
 */
export async function askThread<T>(
  thread: Worker,
  job: object,
  told: (done: number, of: number) => void,
  signal: AbortSignal | undefined,
): Promise<T> {
  const heard = new AbortController();
  const until = AbortSignal.any(signal ? [signal, heard.signal] : [heard.signal]);
  thread.ref();
  thread.postMessage(job);
  try {
    for await (const [said] of on(thread, 'message', { signal: until, close: ['exit'] }) as AsyncIterable<[Said<T>]>) {
      if ('made' in said) return said.made;
      if ('broke' in said) throw new Error(said.broke);
      told(said.done, said.of);
    }
  } finally {
    heard.abort();
  }
  throw new Error('a thread ended without an answer');
}
