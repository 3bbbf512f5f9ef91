import 'server-only';
import { run } from 'graphile-worker';
import { closePool, pool } from '#data/pool';
import { pushKeys } from '../calls/push-keys';
import { sealWebhooks } from '../calls/webhook-secret';
import { env } from '../env';
import { logError, logInfo } from '../log';
import { judgeAlarms } from './judge-alarms';
import { keepBrokers } from './keep-brokers';
import { workerLogger } from './logger';
import { runnerEvents } from './runners';
import { settleReadings } from './settle-readings';
import { crontab, taskList } from './task-list';
import { heartbeat } from './tasks/heartbeat';
import { readingParts } from './tasks/reading-parts';

/** Jobs one worker process runs at once. */
const CONCURRENCY = 4;

/** Runs jobs until the process is asked to end; then lets those under way finish. */
async function main(): Promise<void> {
  // Read once before anything starts: a word without meaning stops the process here, and not at some later job.
  const { DATABASE_URL } = env();
  const runner = await run({
    pgPool: pool(),
    taskList,
    crontab,
    concurrency: CONCURRENCY,
    logger: workerLogger,
    events: runnerEvents(),
    // The signals are ours: after the last job the connections have to be closed as well.
    noHandleSignals: true,
  });
  const judging = judgeAlarms();
  const keeping = keepBrokers();
  const settling = settleReadings();
  let isStopping = false;
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.on(signal, () => {
      if (isStopping) return;
      isStopping = true;
      runner.stop().catch((error: unknown) => logError('worker could not stop', error));
    });
  }
  await pushKeys().catch((error: unknown) => logError('keys for browser push could not be made', error));
  await sealWebhooks().catch((error: unknown) => logError('secrets of webhooks could not be sealed', error));
  await readingParts().catch((error: unknown) => logError('parts of the readings could not be made', error));
  // A connection cut at this very moment costs one sign of life, not the worker: the timetable gives the next.
  await heartbeat().catch((error: unknown) => logError('worker could not say that it is up', error));
  logInfo('worker is up', { tasks: Object.keys(taskList).join(' '), database: new URL(DATABASE_URL).host });
  await runner.promise;
  await keeping.stop();
  await Promise.all([judging.stop(), settling.stop()]);
  await closePool();
  logInfo('worker has ended');
}

main().catch((error: unknown) => {
  logError('worker broke', error);
  process.exit(1);
});
