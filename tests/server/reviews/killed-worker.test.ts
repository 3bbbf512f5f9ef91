import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { afterEach, expect, test, vi } from 'vitest';
import { reviewSystem } from '#core/review/review-system';
import { reviewSite } from '#server/reviews/review-site';
import { wakeDue } from '#server/reviews/wake-due';
import { ROOT } from '../../../app/_start/places.mjs';
import { system } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();
let worker: ChildProcess | undefined;

afterEach(() => {
  worker?.kill('SIGKILL');
});

const computed = async () =>
  (
    await query(
      'SELECT s.key, r.computed_at AS at FROM review_result r JOIN system s ON s.id = r.system_id ORDER BY r.computed_at',
    )
  ).rows;

/** A small system first, which is soon judged; then a large one, during which the worker is killed. */
const given = smallFacility(smallSystem(), system({ key: 'large', name: 'Large' }));

test('a worker that is killed in the middle of a site loses nothing that it has computed, and the rest is done by another', async () => {
  await keep(given);
  const args = ['--conditions=react-server', '--import', 'tsx', 'app/_server/worker/main.ts'];
  worker = spawn(process.execPath, args, { cwd: ROOT, stdio: 'ignore' });
  const [first] = await vi.waitFor(
    async () => {
      const done = await computed();
      expect(done.map(({ key }) => key)).toEqual(['tank-1']);
      return done;
    },
    { timeout: 60_000, interval: 20 },
  );
  worker.kill('SIGKILL');
  await once(worker, 'exit');
  expect((await query('SELECT state, systems_done AS done, systems_all AS all FROM review_run')).rows[0]).toMatchObject(
    {
      state: 'running',
      all: 2,
    },
  );
  // The library holds the job of a worker that gave no word for four hours; the look every minute does not wait for it.
  await wakeDue(new Date(Date.now() + 120_000));
  const waiting = await query(
    `SELECT payload->>'site' AS site FROM graphile_worker._private_jobs WHERE locked_at IS NULL`,
  );
  const asked: string[] = [];
  await reviewSite(waiting.rows[0].site, {
    compute: async ({ system: key }) => {
      asked.push(key);
      return { ...reviewSystem(smallFacility(), smallSystem(), '2026-06-01'), system: key };
    },
  });
  expect(asked).toEqual(['large']);
  const after = await computed();
  expect(after.map(({ key }) => key)).toEqual(['tank-1', 'large']);
  expect(after[0]).toEqual(first);
  expect((await query('SELECT state FROM review_run')).rows).toEqual([{ state: 'done' }]);
}, 120_000);
