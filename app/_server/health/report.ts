import 'server-only';
import type { Health } from '#shape/api/health';
import { judgingNow } from '#data/alarms/judging';
import { listPaths, type Path, type PathSighting } from '#data/calls/paths';
import { findLastSighting } from '#data/worker-sightings';
import { now } from '../clock';
import { env } from '../env';
import { logError } from '../log';
import { isMailConfigured } from '../mail/send-mail';
import { isNextPartThere } from '../readings/keep-parts';
import { isJudging } from './judged';

/** ms without a sign after which a worker is late: it gives one every minute. */
const LATE_MS = 150_000;
/** ms after which what was last seen of a way out says nothing of the present: it is looked at every five minutes. */
const STALE_MS = 900_000;

/**
 * Asks the database, and through it when a worker last gave a sign, how far alarms are judged, who still waits to be told, and
 * whether mail and the watch kept outside are reached.
 *
 * @returns   what is there and what is not; the reason is in the log
 */
export async function reportHealth(): Promise<Health> {
  const at = now();
  try {
    const [seen, isReady, judging, paths] = await Promise.all([
      findLastSighting(),
      isNextPartThere(),
      judgingNow(),
      listPaths(),
    ]);
    return {
      web: 'up',
      database: 'up',
      worker: seen === null ? 'never seen' : at.getTime() - seen.getTime() > LATE_MS ? 'late' : 'up',
      workerLastSeen: seen?.toISOString() ?? null,
      readings: isReady ? 'ready' : 'no part for next month',
      alarms: judging.judgedAt === null ? 'no site' : isJudging(judging, at) ? 'judged' : 'not judged',
      alarmsJudgedAt: judging.judgedAt?.toISOString() ?? null,
      callsWaiting: judging.waiting,
      oldestCallAt: judging.oldestAt?.toISOString() ?? null,
      mail: isMailConfigured() ? pathState(paths, 'mail', at) : 'not set up',
      outside: env().HOLDFAST_PING_URL === undefined ? 'not set up' : pathState(paths, 'outside', at),
    };
  } catch (error) {
    logError('database does not answer', error);
    return {
      ...{ web: 'up', database: 'down', worker: 'unknown', workerLastSeen: null, readings: 'unknown' },
      ...{ alarms: 'unknown', alarmsJudgedAt: null, callsWaiting: null, oldestCallAt: null },
      ...{ mail: 'unknown', outside: 'unknown' },
    };
  }
}

function pathState(paths: readonly PathSighting[], path: Path, at: Date): 'up' | 'down' | 'unknown' {
  const seen = paths.find((one) => one.path === path);
  if (!seen || at.getTime() - seen.checkedAt.getTime() > STALE_MS) return 'unknown';
  return seen.isUp ? 'up' : 'down';
}
