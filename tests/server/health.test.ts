import { expect, test } from 'vitest';
import { closePool } from '#data/pool';
import { recordSighting } from '#data/worker-sightings';
import { reportHealth } from '#server/health/report';
import { now } from '#server/clock';
import { freshDatabase } from '../_support/database';

freshDatabase();
const ago = (seconds: number) => new Date(now().getTime() - seconds * 1000);

test('says of the worker that it was never seen, is late, or is up', async () => {
  expect(await reportHealth()).toMatchObject({ database: 'up', worker: 'never seen', workerLastSeen: null });
  const long = ago(200);
  await recordSighting('a', long, ago(86_400));
  expect(await reportHealth()).toMatchObject({ worker: 'late', workerLastSeen: long.toISOString() });
  await recordSighting('b', ago(10), ago(86_400));
  expect(await reportHealth()).toMatchObject({ web: 'up', database: 'up', worker: 'up' });
});

test('says that the database is down when it does not answer, instead of breaking', async () => {
  await closePool();
  expect(await reportHealth()).toEqual({ web: 'up', database: 'down', worker: 'unknown', workerLastSeen: null });
});
