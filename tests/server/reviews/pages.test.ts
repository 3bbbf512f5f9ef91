import { reviewSystem } from '#core/review/review-system';
import { beforeAll, describe, expect, test } from 'vitest';
import { listSites } from '#data/sites';
import { now } from '#server/clock';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { dayIn } from '#server/local-day';
import { getCase } from '#server/reviews/get-case';
import { getSystem } from '#server/reviews/get-system';
import { listSystems } from '#server/reviews/list-systems';
import { reviewSite } from '#server/reviews/review-site';
import { site } from '../../_support/build-facility';
import { countQueries } from '../../_support/count-queries';
import { freshDatabase } from '../../_support/database';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep } from '../../_support/stored';

freshDatabase();

const first = smallFacility(smallSystem(), smallSystem('tank-2', 'Tank 2'));
const today = dayIn(first.site.zone, now());
const review = reviewSystem(first, smallSystem(), today);
const CASE = 'heater-on:heater-1:normal';

beforeAll(async () => {
  await keep(first);
  const [entry] = await listSites();
  await reviewSite(entry?.id ?? '', { compute: async ({ system }) => ({ ...review, system }) });
  await keep({ ...smallFacility(), site: site({ key: 'branch', name: 'Branch' }) });
});

describe('the list of systems', () => {
  test('has every system of every site with what its review says or how far it is', async () => {
    const list = await listSystems(LOCAL_PERSON);
    if (!list.ok) throw new Error('no list');
    expect(list.value.sites.map(({ key, systems }) => [key, systems])).toEqual([
      ['branch', 1],
      ['harbour', 2],
    ]);
    expect(list.value.systems.map(({ site: { key: at }, key, review: { state } }) => [at, key, state])).toEqual([
      ['branch', 'tank-1', 'under-way'],
      ['harbour', 'tank-1', 'current'],
      ['harbour', 'tank-2', 'current'],
    ]);
    expect(list.value.systems[1]).toMatchObject({ tanks: 1, animals: 3, volumeL: 432, kind: 'reef' });
  });

  test('asks the database nine questions, however many sites and systems there are', async () => {
    await listSystems(LOCAL_PERSON);
    const asked = await countQueries(() => listSystems(LOCAL_PERSON));
    expect(asked).toHaveLength(9);
    for (const question of asked) expect(question).not.toContain('"body"');
  });

  test('asks one more for a site that was changed since, and for that one alone', async () => {
    const changed = { ...smallFacility(), site: site({ key: 'branch', name: 'Branch', altitudeM: 9 }) };
    await keep(changed);
    expect(await countQueries(() => listSystems(LOCAL_PERSON))).toHaveLength(9 + 1);
  });

  test('has nothing of a site that one may not see', async () => {
    const visitor: Who = { id: 'x', name: 'X', everywhere: null, at: { branch: 'viewer' } };
    const list = await listSystems(visitor);
    expect(list.ok && list.value.sites.map(({ key }) => key)).toEqual(['branch']);
    expect(list.ok && list.value.systems.every((one) => one.site.key === 'branch')).toBe(true);
  });
});

describe('the page of a system', () => {
  test('has the system in its site and its review', async () => {
    const page = await getSystem(LOCAL_PERSON, { site: 'harbour', system: 'tank-1' });
    expect(page).toEqual({
      ok: true,
      value: {
        facility: first,
        system: first.systems[0],
        today,
        state: expect.objectContaining({ state: 'current', judgedOn: today }),
        review: JSON.parse(JSON.stringify(review)),
        siteFindings: [],
        use: [],
        // There is no longer look yet.
        firstFix: null,
        mayDescribe: true,
      },
    });
  });

  test('asks at most five questions', async () => {
    const asked = await countQueries(() => getSystem(LOCAL_PERSON, { site: 'harbour', system: 'tank-1' }));
    expect(asked.length).toBeLessThanOrEqual(5);
  });

  test('is not there for a system, a site or a person without one', async () => {
    const stranger: Who = { id: 'x', name: 'X', everywhere: null, at: { branch: 'admin' } };
    const missing = (what: string) => ({ ok: false, reason: { why: 'not-found', what } });
    expect(await getSystem(LOCAL_PERSON, { site: 'harbour', system: 'tank-9' })).toEqual(missing('system'));
    expect(await getSystem(LOCAL_PERSON, { site: 'nowhere', system: 'tank-1' })).toEqual(missing('site'));
    expect(await getSystem(stranger, { site: 'harbour', system: 'tank-1' })).toEqual(missing('site'));
  });
});

describe('the page of a fault case', () => {
  test('has the stored judgement, and the course of both columns', async () => {
    const page = await getCase(LOCAL_PERSON, { site: 'harbour', system: 'tank-1', case: CASE });
    if (!page.ok) throw new Error('no case');
    const { case: found, trajectories } = page.value;
    expect(found).toEqual(JSON.parse(JSON.stringify(review.cases.find(({ id }) => id === CASE))));
    expect(trajectories?.claimed.tracks.map(({ quantity }) => quantity)).toContain('temperature');
    expect(trajectories?.tested.moments[0]).toMatchObject({ kind: 'begins', atS: 0 });
    const harm = trajectories?.claimed.moments.find(({ kind }) => kind === 'harm');
    expect(harm?.atS).toBeGreaterThan(0);
  });

  test('judges it on the spot when no review is stored that still holds', async () => {
    const page = await getCase(LOCAL_PERSON, { site: 'branch', system: 'tank-1', case: CASE });
    expect(page.ok && page.value.case).toMatchObject({ id: CASE, claimed: { verdict: expect.any(String) } });
  });

  test('is not there for a fault that cannot befall it', async () => {
    const none = { ok: false, reason: { why: 'not-found', what: 'fault case' } };
    expect(await getCase(LOCAL_PERSON, { site: 'harbour', system: 'tank-1', case: 'chiller-on:x:normal' })).toEqual(
      none,
    );
  });
});
