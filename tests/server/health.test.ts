import { expect, test } from 'vitest';
import { closePool } from '#data/pool';
import { recordSighting } from '#data/worker-sightings';
import { reportHealth } from '#server/health/report';
import { readingParts } from '#server/worker/tasks/reading-parts';
import { now } from '#server/clock';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();
const ago = (seconds: number) => new Date(now().getTime() - seconds * 1000);

test('says of the worker that it was never seen, is late, or is up', async () => {
  expect(await reportHealth()).toMatchObject({ database: 'up', worker: 'never seen', workerLastSeen: null });
  const long = ago(200);
  await recordSighting('a', long, ago(86_400));
  expect(await reportHealth()).toMatchObject({ worker: 'late', workerLastSeen: long.toISOString() });
  await recordSighting('b', ago(10), ago(86_400));
  expect(await reportHealth()).toMatchObject({ web: 'up', database: 'up', worker: 'up' });
});

test('says when next month’s readings have no place to go to, until the worker has made it', async () => {
  expect(await reportHealth()).toMatchObject({ readings: 'no part for next month' });
  await readingParts();
  expect(await reportHealth()).toMatchObject({ readings: 'ready' });
  const { rows } = await query(
    `SELECT count(*)::int AS n FROM pg_class WHERE relnamespace = 'reading_parts'::regnamespace AND relkind = 'r'`,
  );
  expect(rows).toEqual([{ n: 4 }]);
});

test('says that the database is down when it does not answer, instead of breaking', async () => {
  await closePool();
  expect(await reportHealth()).toEqual({
    web: 'up',
    database: 'down',
    worker: 'unknown',
    workerLastSeen: null,
    readings: 'unknown',
    alarms: 'unknown',
    alarmsJudgedAt: null,
    callsWaiting: null,
    oldestCallAt: null,
    mail: 'unknown',
    outside: 'unknown',
  });
});
