import { reviewSystem } from '#core/review/review-system';
import type { Study } from '#core/review/study';
import { studySystem } from '#core/review/study-system';
import { runOnce } from 'graphile-worker';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { pool } from '#data/pool';
import { listSites } from '#data/sites';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import type { ComputeStudy } from '#server/reviews/compute-study';
import { getStudy } from '#server/reviews/get-study';
import { reviewSite } from '#server/reviews/review-site';
import { studySite } from '#server/reviews/study-site';
import { workerLogger } from '#server/worker/logger';
import { taskList } from '#server/worker/task-list';
import { site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep } from '../../_support/stored';

const { query } = freshDatabase();

const TWO = smallFacility(smallSystem(), smallSystem('tank-2', 'Tank 2'));
const review = reviewSystem(smallFacility(), smallSystem(), '2026-06-01');
const canned: Study = studySystem(smallFacility(), smallSystem(), '2026-06-01', review);
let siteId = '';

/** Gives the same study whatever is asked, and notes what was asked. */
function quick(asked: string[], before: (system: string) => Promise<void> | void = () => undefined): ComputeStudy {
  return async ({ system }) => {
    asked.push(system);
    await before(system);
    return { ...canned, system };
  };
}

const reviewed = async () => await reviewSite(siteId, { compute: async ({ system }) => ({ ...review, system }) });
const page = async (system: string, who: Who = LOCAL_PERSON, of = 'harbour') => {
  const found = await getStudy(who, { site: of, system });
  return found.ok ? found.value : found.reason.why;
};
const stateOf = async (system: string) => {
  const found = await page(system);
  return typeof found === 'string' ? found : found.state.state;
};
const jobs = async () => (await query('SELECT task_identifier AS task FROM graphile_worker.jobs')).rows;

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM site; DELETE FROM system; DELETE FROM review_run;
    DELETE FROM review_result; DELETE FROM review_study; DELETE FROM study_run; DELETE FROM graphile_worker._private_jobs`);
  await keep(TWO);
  siteId = (await listSites())[0]?.id ?? '';
  await query('DELETE FROM graphile_worker._private_jobs');
});

describe('the studies of a site', () => {
  test('are asked for once its reviews are there, computed by the worker, and then not asked for again', async () => {
    await keep(smallFacility());
    await runOnce({ pgPool: pool(), taskList, logger: workerLogger });
    const found = await page('tank-1');
    expect(found).toMatchObject({ state: { state: 'ready', study: { system: 'tank-1', tried: canned.tried } } });
    await reviewSite(siteId);
    expect(await jobs()).toEqual([]);
  });

  test('wait for the review of their system', async () => {
    const asked: string[] = [];
    await studySite(siteId, { compute: quick(asked) });
    expect(asked).toEqual([]);
    expect(await stateOf('tank-1')).toBe('under-way');
    await reviewed();
    expect(await jobs()).toEqual([{ task: 'study-site' }]);
    await studySite(siteId, { compute: quick(asked) });
    expect(asked).toEqual(['tank-1', 'tank-2']);
    expect(await stateOf('tank-2')).toBe('ready');
  });

  test('are computed again only where their inputs changed, and the one before is shown meanwhile', async () => {
    const asked: string[] = [];
    await reviewed();
    await studySite(siteId, { compute: quick(asked) });
    const systems = TWO.systems.map((one) =>
      one.key === 'tank-2' ? { ...one, salinity: { value: 34, origin: 'entered' as const } } : one,
    );
    await keep({ ...TWO, systems });
    expect(await page('tank-2')).toMatchObject({ state: { state: 'under-way', before: { system: 'tank-2' } } });
    expect(await stateOf('tank-1')).toBe('ready');
    await reviewed();
    await studySite(siteId, { compute: quick(asked) });
    expect(asked).toEqual(['tank-1', 'tank-2', 'tank-2']);
  });

  test('that break are noted, do not stop the others, and are not tried again until something changes', async () => {
    const quiet = vi.spyOn(console, 'error').mockReturnValue();
    await reviewed();
    const asked: string[] = [];
    const compute = quick(asked, (system) => {
      if (system === 'tank-1') throw new Error('negative volume');
    });
    await studySite(siteId, { compute });
    await studySite(siteId, { compute });
    expect([await stateOf('tank-1'), await stateOf('tank-2'), asked]).toEqual([
      'broken',
      'ready',
      ['tank-1', 'tank-2'],
    ]);
    expect(quiet).toHaveBeenCalled();
    quiet.mockRestore();
  });
});

describe('a run that another has overtaken', () => {
  test('keeps nothing, whatever it has computed', async () => {
    await reviewed();
    const asked: string[] = [];
    await studySite(siteId, {
      compute: quick(asked, async (system) => {
        if (asked.length === 1) await studySite(siteId, { compute: quick([], () => expect(system).toBe('tank-1')) });
      }),
    });
    // The inner run has kept both; the outer one ends without its second system.
    expect(asked).toEqual(['tank-1']);
    expect(await stateOf('tank-2')).toBe('ready');
  });

  test('is broken off at its next sign', async () => {
    await reviewed();
    const compute: ComputeStudy = async (_, told, signal) => {
      await studySite(siteId, { compute: quick([]) });
      return await new Promise((_resolve, refuse) => {
        signal.addEventListener('abort', () => refuse(signal.reason), { once: true });
        setTimeout(() => told(1, 10), 1100);
      });
    };
    await studySite(siteId, { compute });
    expect(await stateOf('tank-1')).toBe('ready');
  });
});

test('how far a study is is told while it is computed', async () => {
  await reviewed();
  const seen: unknown[] = [];
  await studySite(siteId, {
    compute: async ({ system }, told) => {
      await vi.waitFor(
        async () => {
          told(3, 12);
          expect(await page(system)).toMatchObject({ progress: { done: 3, of: 12 } });
        },
        { timeout: 10_000, interval: 100 },
      );
      seen.push(await page(system === 'tank-1' ? 'tank-2' : 'tank-1'));
      return { ...canned, system };
    },
  });
  expect(seen[0]).toEqual({ state: { state: 'under-way', before: null }, progress: null });
});

test('a study is seen by whoever may see its site, and is of its own site alone', async () => {
  await keep({ ...smallFacility(), site: site({ key: 'branch', name: 'Branch' }) });
  await reviewed();
  await studySite(siteId, { compute: quick([]) });
  expect(await stateOf('tank-1')).toBe('ready');
  expect(await page('tank-1', LOCAL_PERSON, 'branch')).toMatchObject({ state: { state: 'under-way', before: null } });
  expect(await page('no-such-system')).toBe('not-found');
  const outsider: Who = { ...LOCAL_PERSON, everywhere: null, at: { branch: 'viewer' } };
  expect(await page('tank-1', outsider)).toBe('not-found');
});
