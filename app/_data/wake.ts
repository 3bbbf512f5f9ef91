import 'server-only';
import type { Transaction } from './transaction';

/** When and how often a task is to run. */
export interface WakeOptions {
  /** Only one waiting job has this key: a second call replaces the first, so that a task is not queued twice. */
  key?: string;
  /** Not before this instant; as soon as possible when left out. */
  runAt?: Date;
  /** Times it is tried when it fails, each after a longer pause; the library's own 25 when left out. */
  maxAttempts?: number;
}

/**
 * Asks a worker to run a task. Inside a transaction the task is woken if and when the transaction is kept, and not at
 * all when it is not: what has to follow a change is asked for in the change itself.
 *
 * @param transaction   the transaction, or the client itself
 * @param task          name of a file in `_server/worker/tasks`
 * @param payload       what the task is told; plain JSON
 * @param options       key and instant
 */
export async function wake(
  transaction: Pick<Transaction, '$executeRaw'>,
  task: string,
  payload: object,
  { key, runAt, maxAttempts }: WakeOptions = {},
): Promise<void> {
  const said = JSON.stringify(payload);
  const instant = runAt?.toISOString();
  await transaction.$executeRaw`
    SELECT graphile_worker.add_job(
      identifier => ${task}::text, payload => ${said}::json,
      run_at => ${instant ?? null}::timestamptz, job_key => ${key ?? null}::text,
      max_attempts => ${maxAttempts ?? null}::int)`;
}
