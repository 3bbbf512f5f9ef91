import { expect, test } from 'vitest';
import { database } from '#data/client';
import { freeJobsOfGone } from '#data/gone-workers';
import { wake } from '#data/wake';
import { recordSighting } from '#data/worker-sightings';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();

test('a job of a worker that is gone is let go, and one of a worker that was seen is not', async () => {
  const [early, late] = [new Date(Date.now() - 600_000), new Date(Date.now() - 150_000)];
  for (const worker of ['killed', 'there', 'new']) await wake(database(), 'heartbeat', { worker });
  await query(`UPDATE graphile_worker._private_jobs SET locked_by = payload->>'worker',
    locked_at = CASE payload->>'worker' WHEN 'new' THEN now() ELSE now() - interval '9 minutes' END`);
  await recordSighting('killed', early, early);
  await recordSighting('there', new Date(), early);
  expect(await freeJobsOfGone(late)).toEqual(['killed']);
  const { rows } = await query('SELECT locked_by FROM graphile_worker._private_jobs ORDER BY locked_by NULLS FIRST');
  expect(rows.map((row) => row.locked_by)).toEqual([null, 'new', 'there']);
  expect(await freeJobsOfGone(late)).toEqual([]);
});
