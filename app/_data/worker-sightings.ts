import 'server-only';
import { database } from './client';

/**
 * Notes that a worker process is alive, and forgets those not seen since `forgetBefore`.
 *
 * @param worker         name of the process
 * @param seenAt         the instant
 * @param forgetBefore   processes last seen before this instant are forgotten
 */
export async function recordSighting(worker: string, seenAt: Date, forgetBefore: Date): Promise<void> {
  const { workerSighting } = database();
  await workerSighting.upsert({ where: { worker }, create: { worker, seenAt }, update: { seenAt } });
  await workerSighting.deleteMany({ where: { seenAt: { lt: forgetBefore } } });
}

/**
 * @returns   when any worker was last seen; null when none ever was
 * @throws    when the database does not answer
 */
export async function findLastSighting(): Promise<Date | null> {
  const { _max } = await database().workerSighting.aggregate({ _max: { seenAt: true } });
  return _max.seenAt;
}
