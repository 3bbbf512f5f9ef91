import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { OPERATING_STATES } from '#core/facility/system';
import { newId } from '#data/new-id';
import { verifyChain } from '#data/records/verify-chain';
import { statesBegun, statesInForce } from '#data/states/states';
import type { Who } from '#server/gate/who';
import { now } from '#server/clock';
import { beginStateOf } from '#server/states/begin-state';
import { endStateOf } from '#server/states/end-state';
import { getStates } from '#server/states/get-states';
import { listStates } from '#server/states/list-states';
import { putOffStateOf } from '#server/states/put-off-state';
import { beginRequest, endRequest, putOffRequest } from '#shape/states/requests';
import { freshDatabase } from '../../_support/database';
import { entered } from '../../_support/given';
import { letIn } from '../../_support/people';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const PLACE = { site: 'harbour', system: 'tank-1' };
const MINUTE = 60_000;
let siteId = '';
let ada: Who;
let ben: Who;

const begin = (who: Who, more: object = {}) =>
  beginStateOf(
    who,
    beginRequest.parse({ ...PLACE, entry: newId(), state: 'water-change', lasts: '60', unit: 'minutes', ...more }),
  );
const putOff = (who: Who, run: string, more: object = {}) =>
  putOffStateOf(
    who,
    putOffRequest.parse({ ...PLACE, run, entry: newId(), lasts: 3, unit: 'hours', note: 'slow drain', ...more }),
  );
const end = (who: Who, run: string, note?: string) =>
  endStateOf(who, endRequest.parse({ ...PLACE, run, entry: newId(), 'seen:level': 'yes', ...(note ? { note } : {}) }));
const runs = async (at = now()) => await statesInForce(siteId, at);
const kinds = async () =>
  (await query(`SELECT kind FROM record WHERE kind LIKE 'state%' ORDER BY seq`)).rows.map((r) => r.kind);

beforeAll(async () => {
  const states = [{ name: 'feeding', lastsMin: entered(10), endsBy: 'controller' } as const];
  await keep(smallFacility({ ...smallSystem(), states }, smallSystem('tank-2', 'Tank 2')));
  ({ siteId } = await stored('harbour'));
  ada = await letIn(query, siteId, 'harbour', 'Ada', 'aquarist');
  ben = await letIn(query, siteId, 'harbour', 'Ben', 'aquarist');
});

beforeEach(async () => {
  await query('SET session_replication_role = replica; DELETE FROM state_event; DELETE FROM state_open');
});

describe('a state', () => {
  test('is in force from its beginning to its end, and the record tells both', async () => {
    const before = (await kinds()).length;
    expect(await begin(ada, { note: 'weekly' })).toEqual({ ok: true, value: PLACE });
    const [run] = await runs();
    expect(run).toMatchObject({
      state: 'water-change',
      begunBy: ada.id,
      note: 'weekly',
      outstayed: false,
      endsItself: false,
    });
    expect((run?.until.getTime() ?? 0) - (run?.begunAt.getTime() ?? 0)).toBe(60 * MINUTE);
    expect(await end(ben, run?.run ?? '', 'return 52 W, level at its mark')).toMatchObject({ ok: true });
    expect(await runs()).toEqual([]);
    expect((await kinds()).slice(before)).toEqual(['state-begun', 'state-ended']);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
    const { rows } = await query(`SELECT body FROM record WHERE kind LIKE 'state%'`);
    expect(JSON.stringify(rows)).not.toMatch(/Ada|Ben/);
  });

  test('of which several are in force at once, the ones past their end first', async () => {
    await begin(ada, { state: 'treatment', lasts: 7, unit: 'days' });
    await begin(ada, { state: 'backwash', lasts: 5 });
    await begin(ada, { system: 'tank-2', lasts: 30 });
    const later = new Date(now().getTime() + 10 * MINUTE);
    expect((await runs(later)).map(({ state, system, outstayed }) => [state, system.key, outstayed])).toEqual([
      ['backwash', 'tank-1', true],
      ['water-change', 'tank-2', false],
      ['treatment', 'tank-1', false],
    ]);
  });

  test('with hands in the water outstays its end and stays in force; one that a device ends is over', async () => {
    await begin(ada);
    await begin(ada, { state: 'feeding', lasts: 10 });
    const later = new Date(now().getTime() + 90 * MINUTE);
    expect((await runs(later)).map(({ state }) => state)).toEqual(['water-change']);
    const begun = await statesBegun([siteId], later);
    expect(begun.map(({ state, isOver, outstayed }) => [state, isOver, outstayed])).toEqual([
      ['water-change', false, true],
      ['feeding', true, false],
    ]);
  });

  test('that a device has ended may be begun anew, and its beginning stays on record', async () => {
    await begin(ada, { state: 'feeding', lasts: 1 });
    await query(`UPDATE state_open SET until = now() - interval '1 minute'`);
    expect(await begin(ben, { state: 'feeding', lasts: 10 })).toMatchObject({ ok: true });
    expect(await runs()).toHaveLength(1);
    expect((await query('SELECT FROM state_event')).rowCount).toBe(2);
  });

  test('is put off with a reason, to a later end only', async () => {
    await begin(ada);
    const [run] = await runs();
    expect(await putOff(ben, run?.run ?? '', { lasts: 5, unit: 'minutes' })).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'lasts' }] },
    });
    expect(await putOff(ben, run?.run ?? '')).toMatchObject({ ok: true });
    const [later] = await runs();
    expect(later?.until.getTime()).toBeGreaterThan(now().getTime() + 175 * MINUTE);
    expect(later?.putOff).toMatchObject([{ by: ben.id, note: 'slow drain' }]);
    expect(() =>
      putOffRequest.parse({ ...PLACE, run: newId(), entry: newId(), lasts: 3, unit: 'hours', note: ' ' }),
    ).toThrow();
    expect(() => beginRequest.parse({ ...PLACE, entry: newId(), state: 'night', lasts: 32, unit: 'days' })).toThrow();
    expect(() => beginRequest.parse({ ...PLACE, entry: newId(), state: 'normal', lasts: 1, unit: 'days' })).toThrow();
  });

  test('with hands in the water is ended only by somebody who says what they saw', async () => {
    await begin(ada);
    const [run] = await runs();
    expect(await end(ada, run?.run ?? '')).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'note' }] } });
    expect(await runs()).toHaveLength(1);
  });
});

describe('two people at once', () => {
  test('begin one state once: the slower one is told who was first', async () => {
    const both = await Promise.all([begin(ada), begin(ben)]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    const refusal = both.find(({ ok }) => !ok);
    expect(refusal).toMatchObject({
      reason: { why: 'conflict', now: expect.stringMatching(/^(Ada|Ben) began the water change at \d\d:\d\d/) },
    });
    expect(await runs()).toHaveLength(1);
  });

  test('end it once, and the slower one is told', async () => {
    await begin(ada);
    const [run] = await runs();
    const both = await Promise.all([end(ada, run?.run ?? '', 'all runs'), end(ben, run?.run ?? '', 'all runs')]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.find(({ ok }) => !ok)).toMatchObject({
      reason: { now: expect.stringContaining('ended the water change') },
    });
    expect((await query(`SELECT FROM state_event WHERE kind = 'ended'`)).rowCount).toBe(1);
  });

  test('what one sends twice is done once', async () => {
    const entry = newId();
    expect(await Promise.all([begin(ada, { entry }), begin(ada, { entry })])).toMatchObject([
      { ok: true },
      { ok: true },
    ]);
    expect(await begin(ben, { entry, state: 'backwash' })).toMatchObject({ reason: { why: 'not-found' } });
    expect((await query('SELECT FROM state_event')).rowCount).toBe(1);
  });
});

describe('the pages of states', () => {
  test('tell who began it, what may be begun and what is to be proved, and to a viewer no more', async () => {
    await begin(ada, { note: 'weekly' });
    const page = await getStates(ben, PLACE);
    expect(page).toMatchObject({
      ok: true,
      value: { maySet: true, lines: [{ begunBy: 'Ada', hasHandsIn: true }], events: [{ kind: 'begun', by: 'Ada' }] },
    });
    if (!page.ok) throw new Error('no page');
    expect(page.value.choices.map(({ state }) => state)).toEqual(
      OPERATING_STATES.filter((state) => state !== 'normal' && state !== 'water-change'),
    );
    expect(page.value.choices[0]).toMatchObject({ isDescribed: true, lastsMin: 10, endsItself: true });
    const viewer: Who = { ...ben, at: { harbour: 'viewer' } };
    expect(await listStates(viewer, { site: 'harbour' })).toMatchObject({ value: { maySet: false, lines: [{}] } });
    expect(await begin(viewer)).toMatchObject({ reason: { why: 'not-allowed' } });
    expect(await getStates(ben, { ...PLACE, system: 'none' })).toMatchObject({ reason: { why: 'not-found' } });
  });
});
