import 'server-only';
import { once } from 'node:events';
import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';

/** What a thread reads first, from the disk as it is: the pages' bundle must not take it in. */
const START = 'app/_server/apart/call-start.mjs';

type Answered = { answer: unknown } | { broke: string };

/** Threads that have nothing to do, by file: reading what one needs takes a second or two, so one is kept. */
const idle = new Map<string, Worker>();
/** When whatever was asked of a file before is done. */
const last = new Map<string, Promise<unknown>>();

/**
 * Has the `answer` of a file work in a thread of its own, so that the process goes on answering meanwhile; one call after the
 * other, however many ask at once.
 *
 * @param file     TypeScript by its path from the top of the tree; it exports `answer`, which takes the job
 * @param job      plain data
 * @param withinMs what waiting and working may take together
 * @returns        what `answer` gave, plain data
 * @throws         what it threw, or that it took too long
 */
export async function callApart(file: string, job: unknown, withinMs: number): Promise<unknown> {
  const signal = AbortSignal.timeout(withinMs);
  const before = last.get(file) ?? Promise.resolve();
  const mine = before.then(async () => await called(file, job, signal));
  last.set(
    file,
    mine.catch(() => undefined),
  );
  return await mine;
}

async function called(file: string, job: unknown, signal: AbortSignal): Promise<unknown> {
  signal.throwIfAborted();
  const thread = idle.get(file) ?? startThread(file);
  idle.delete(file);
  thread.ref();
  try {
    thread.postMessage(job);
    const [said] = (await Promise.race([
      once(thread, 'message', { signal }),
      once(thread, 'exit', { signal }).then(() => [{ broke: `the thread of ${file} ended without an answer` }]),
    ])) as [Answered];
    if ('broke' in said) throw new Error(said.broke);
    idle.set(file, thread);
    // It must not keep a process alive that has nothing else to do.
    thread.unref();
    return said.answer;
  } catch (error) {
    void thread.terminate();
    throw error;
  }
}

/** A thread with the packages as a program reads them, not as the server's bundle does: what draws needs all of React. */
function startThread(file: string): Worker {
  const start = resolve(/* turbopackIgnore: true */ process.cwd(), START);
  return new Worker(/* turbopackIgnore: true */ start, { execArgv: [], workerData: file });
}
