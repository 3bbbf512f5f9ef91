import { reviewSystem } from '#core/review/review-system';
import { runOnce } from 'graphile-worker';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { pool } from '#data/pool';
import { listSites } from '#data/sites';
import { importFacility } from '#server/facility/import-facility';
import { LOCAL_PERSON } from '#server/gate/who';
import type { Compute } from '#server/reviews/compute';
import { listSystems } from '#server/reviews/list-systems';
import { reviewSite } from '#server/reviews/review-site';
import { wakeDue } from '#server/reviews/wake-due';
import { workerLogger } from '#server/worker/logger';
import { taskList } from '#server/worker/task-list';
import { writeFacility } from '#shape/facility/write-facility';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();

const THREE = smallFacility(smallSystem(), smallSystem('tank-2', 'Tank 2'), smallSystem('tank-3', 'Tank 3'));
const canned = reviewSystem(smallFacility(), smallSystem(), '2026-06-01');
let siteId = '';

/** Gives the same review whatever is asked, and notes what was asked. */
function quick(asked: string[], before: (system: string) => Promise<void> | void = () => undefined): Compute {
  return async ({ system }) => {
    asked.push(system);
    await before(system);
    return { ...canned, system };
  };
}

async function states(): Promise<string[]> {
  const list = await listSystems(LOCAL_PERSON);
  if (!list.ok) throw new Error('no list');
  return list.value.systems.map(({ review }) =>
    review.state === 'under-way' ? `${review.done} of ${review.of}` : review.state,
  );
}

const jobs = async () =>
  (await query(`SELECT task_identifier AS task FROM graphile_worker.jobs WHERE task_identifier = 'review-site'`)).rows;

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM site; DELETE FROM system; DELETE FROM review_run;
    DELETE FROM review_result; DELETE FROM graphile_worker._private_jobs`);
  await keep(THREE);
  siteId = (await listSites())[0]?.id ?? '';
});

describe('the reviews of a site', () => {
  test('are computed by the worker that the import woke, and then stand in the list', async () => {
    await keep(smallFacility());
    expect(await states()).toEqual(['0 of 1']);
    await runOnce({ pgPool: pool(), taskList, logger: workerLogger });
    expect(await states()).toEqual(['current']);
    expect(await jobs()).toEqual([]);
    const list = await listSystems(LOCAL_PERSON);
    expect(list.ok && list.value.systems[0]?.review).toMatchObject({ summary: { cases: canned.cases.length } });
  });

  test('are kept one by one, so that the list says how far they are', async () => {
    const seen: string[][] = [];
    await reviewSite(siteId, {
      compute: quick([], async () => {
        seen.push(await states());
      }),
    });
    expect(seen).toEqual([
      ['0 of 3', '0 of 3', '0 of 3'],
      ['current', '1 of 3', '1 of 3'],
      ['current', 'current', '2 of 3'],
    ]);
    expect(await states()).toEqual(['current', 'current', 'current']);
  });

  test('say how many fault cases of the system under way are judged', async () => {
    await keep(smallFacility());
    const compute: Compute = async (job, told) => {
      await vi.waitFor(
        async () => {
          told(3, 12);
          const list = await listSystems(LOCAL_PERSON);
          expect(list.ok && list.value.systems[0]?.review).toMatchObject({
            state: 'under-way',
            cases: { done: 3, of: 12 },
          });
        },
        { timeout: 10_000, interval: 100 },
      );
      return { ...canned, system: job.system };
    };
    await reviewSite(siteId, { compute });
    expect(await states()).toEqual(['current']);
  });

  test('are computed again only where their inputs changed, and the one before is shown meanwhile', async () => {
    const asked: string[] = [];
    await reviewSite(siteId, { compute: quick(asked) });
    await keep({
      ...THREE,
      systems: THREE.systems.map((one) =>
        one.key === 'tank-2' ? { ...one, salinity: { value: 34, origin: 'entered' } } : one,
      ),
    });
    const list = await listSystems(LOCAL_PERSON);
    expect(list.ok && list.value.systems[1]?.review).toMatchObject({
      state: 'under-way',
      before: { cases: canned.cases.length },
    });
    await reviewSite(siteId, { compute: quick(asked) });
    expect(asked).toEqual(['tank-1', 'tank-2', 'tank-3', 'tank-2']);
  });

  test('that break are noted, and neither stop the others nor are tried again until something changes', async () => {
    const quiet = vi.spyOn(console, 'error').mockReturnValue();
    const asked: string[] = [];
    const compute = quick(asked, (system) => {
      if (system === 'tank-2') throw new Error('negative volume');
    });
    await reviewSite(siteId, { compute });
    await reviewSite(siteId, { compute });
    expect(await states()).toEqual(['current', 'broken', 'current']);
    expect(asked).toEqual(['tank-1', 'tank-2', 'tank-3']);
    expect(quiet.mock.calls.join()).toContain('negative volume');
    quiet.mockRestore();
  });
});

describe('a run of reviews', () => {
  test('gives way when the site is changed meanwhile, and keeps nothing more', async () => {
    const asked: string[] = [];
    const changed = {
      ...THREE,
      systems: THREE.systems
        .slice(0, 2)
        .map((one) => ({ ...one, feedGPerDay: { value: 1, origin: 'entered' as const } })),
    };
    const compute = quick(asked, async (system) => {
      if (system === 'tank-2') await importFacility(LOCAL_PERSON, { text: writeFacility(changed) });
    });
    await reviewSite(siteId, { compute });
    expect(asked).toEqual(['tank-1', 'tank-2']);
    expect(await states()).toEqual(['0 of 2', '0 of 2']);
    await reviewSite(siteId, { compute: quick([]) });
    expect(await states()).toEqual(['current', 'current']);
  });

  test('that is broken off is tried again, and does not compute twice what was kept', async () => {
    const stop = new AbortController();
    const asked: string[] = [];
    const compute = quick(asked, (system) => {
      if (system !== 'tank-2') return;
      stop.abort(new Error('the worker is to end'));
      stop.signal.throwIfAborted();
    });
    await expect(reviewSite(siteId, { compute, signal: stop.signal })).rejects.toThrow('the worker is to end');
    expect(await states()).toEqual(['current', '1 of 3', '1 of 3']);
    await reviewSite(siteId, { compute: quick(asked) });
    expect(asked).toEqual(['tank-1', 'tank-2', 'tank-2', 'tank-3']);
  });

  test('of a site that is gone does nothing', async () => {
    const asked: string[] = [];
    await reviewSite('019a0000-0000-7000-8000-000000000000', { compute: quick(asked) });
    expect(asked).toEqual([]);
  });
});

describe('the look every minute at what is due', () => {
  const afterMin = (minutes: number) => new Date(Date.now() + minutes * 60_000);
  const taken = () => query('DELETE FROM graphile_worker._private_jobs');

  test('asks for nothing while a run is under way or all is done', async () => {
    await taken();
    await wakeDue(afterMin(0));
    await reviewSite(siteId, { compute: quick([]) });
    await wakeDue(afterMin(1));
    expect(await jobs()).toEqual([]);
  });

  test('asks again when whoever was at it gives no sign any more', async () => {
    const stop = new AbortController();
    stop.abort(new Error('killed'));
    await taken();
    await expect(reviewSite(siteId, { signal: stop.signal })).rejects.toThrow('killed');
    await wakeDue(afterMin(1));
    expect(await jobs()).toEqual([]);
    await wakeDue(afterMin(2));
    expect(await jobs()).toEqual([{ task: 'review-site' }]);
  });

  test('asks again when the day at the site has changed, or another engine computed what is there', async () => {
    await reviewSite(siteId, { compute: quick([]) });
    await taken();
    await wakeDue(afterMin(24 * 60));
    expect(await jobs()).toEqual([{ task: 'review-site' }]);
    await taken();
    await reviewSite(siteId, { compute: quick([]) });
    await query(`UPDATE review_run SET engine_version = 'older'`);
    await wakeDue(afterMin(0));
    expect(await jobs()).toEqual([{ task: 'review-site' }]);
  });
});
