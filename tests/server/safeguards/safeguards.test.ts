import { runOnce } from 'graphile-worker';
import { beforeEach, describe, expect, test } from 'vitest';
import type { FaultCase } from '#core/review/result';
import { newId } from '#data/new-id';
import { pool } from '#data/pool';
import { verifyChain } from '#data/records/verify-chain';
import type { Who } from '#server/gate/who';
import { now } from '#server/clock';
import { dayIn } from '#server/local-day';
import { getSystem } from '#server/reviews/get-system';
import { getSafeguard } from '#server/safeguards/get-safeguard';
import { listSafeguards } from '#server/safeguards/list-safeguards';
import { putBack } from '#server/safeguards/put-back';
import { recordTest } from '#server/safeguards/record-test';
import { takeOff } from '#server/safeguards/take-off';
import { withdrawTest } from '#server/safeguards/withdraw-test';
import { workerLogger } from '#server/worker/logger';
import { taskList } from '#server/worker/task-list';
import { addDays } from '#core/time/add-days';
import { offRequest, testRequest, withdrawRequest } from '#shape/safeguards/requests';
import { cutOut, heater } from '../../_support/build-equipment';
import { safeguard } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { entered } from '../../_support/given';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();

/** Somebody with a role at the site that everything here is about. */
const somebody = (role: 'viewer' | 'aquarist' | 'lead'): Who => ({
  id: '01a2119e-3a5a-773f-ac5d-188c0fd166eb',
  name: 'Robin Example',
  everywhere: null,
  at: { harbour: role },
});
const AQUARIST = somebody('aquarist');
const LEAD = somebody('lead');
const PLACE = { site: 'harbour', system: 'tank-1', safeguard: 'cut-out' };

let today = '';
let siteId = '';

const aTest = (more: object = {}) =>
  testRequest.parse({
    ...PLACE,
    entry: newId(),
    on: today,
    result: 'worked',
    steps: 'Turned the\r\nknob down.',
    expected: 'It switches off.',
    seen: 'It did.',
    looked: 'Robin',
    ...more,
  });
const anOff = (more: object = {}) =>
  offRequest.parse({ ...PLACE, owner: 'Robin', why: 'new probe', since: today, until: addDays(today, 3), ...more });

const kinds = async () =>
  (await query('SELECT kind FROM record WHERE seq > $1 ORDER BY seq', [links])).rows.map(({ kind }) => kind);
const revision = async () => (await query('SELECT revision FROM site')).rows[0].revision;
let links = 0;

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM safeguard_test; UPDATE safeguard SET tests = '{}'`);
  const system = smallSystem();
  const [first, ...others] = system.equipment;
  const plan = { ...(first ?? heater()).plan, cutOuts: [cutOut({ safeguard: 'cut-out' })] };
  const one = safeguard({ key: 'cut-out', name: 'Cut-out', tests: [] });
  await keep(
    smallFacility({
      ...system,
      equipment: [{ ...(first ?? heater()), ratedW: entered(2000), plan }, ...others],
      safeguards: [one],
    }),
  );
  const site = (await query('SELECT id, zone FROM site')).rows[0];
  siteId = site.id;
  today = dayIn(site.zone, now());
  links = (await query('SELECT seq FROM record_head')).rows[0].seq;
});

describe('a test of a safeguard', () => {
  test('stands in the ledger, in the record, in the file and in the calendar at once', async () => {
    const before = await revision();
    expect(await recordTest(AQUARIST, aTest())).toEqual({ ok: true, value: PLACE });
    expect(await revision()).toBe(before + 1);
    expect(await kinds()).toEqual(['safeguard-tested']);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
    const { facility } = await stored('harbour');
    expect(facility.systems[0]?.safeguards[0]?.tests).toEqual([
      {
        on: today,
        result: 'worked',
        by: 'Robin',
        steps: 'Turned the\nknob down.',
        expected: 'It switches off.',
        seen: 'It did.',
      },
    ]);
    const calendar = await listSafeguards(AQUARIST, { site: 'harbour' });
    const line = calendar.ok && calendar.value.lines.find(({ key }) => key === 'cut-out');
    expect(line).toMatchObject({ state: 'tested', due: addDays(today, 180), system: { key: 'tank-1' } });
  });

  test('says in the record who recorded it and who looked by their ids, and names nobody', async () => {
    await recordTest(AQUARIST, aTest({ looked: 'Ash Example' }));
    const { rows } = await query('SELECT body FROM record WHERE seq > $1', [links]);
    const looked = (await query("SELECT id FROM person_name WHERE name = 'Ash Example'")).rows[0].id;
    expect(rows[0].body).toMatchObject({ by: AQUARIST.id, looked, on: today, seen: 'It did.' });
    expect(JSON.stringify(rows)).not.toContain('Ash');
  });

  test('that is sent twice is kept once', async () => {
    const once = aTest();
    await recordTest(AQUARIST, once);
    expect(await recordTest(AQUARIST, once)).toEqual({ ok: true, value: PLACE });
    expect(await kinds()).toEqual(['safeguard-tested']);
  });

  test('may lie in the past, and not in the future', async () => {
    expect(await recordTest(AQUARIST, aTest({ on: addDays(today, -400) }))).toMatchObject({ ok: true });
    const refused = await recordTest(AQUARIST, aTest({ on: addDays(today, 1) }));
    expect(refused).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'on' }] } });
    const page = await getSafeguard(AQUARIST, PLACE);
    expect(page.ok && page.value.line).toMatchObject({ state: 'untested', due: addDays(today, -220) });
  });

  test('entered by mistake is withdrawn with a reason, once, and stays in the ledger', async () => {
    const wrong = aTest();
    await recordTest(AQUARIST, wrong);
    const request = withdrawRequest.parse({ ...PLACE, test: wrong.entry, reason: 'It was the other heater.' });
    expect(await withdrawTest(AQUARIST, request)).toMatchObject({ ok: true });
    expect(await withdrawTest(AQUARIST, request)).toMatchObject({ reason: { why: 'conflict' } });
    expect(await withdrawTest(AQUARIST, { ...request, test: newId() })).toMatchObject({
      reason: { why: 'not-found', what: 'test' },
    });
    const page = await getSafeguard(AQUARIST, PLACE);
    expect(page).toMatchObject({
      value: {
        line: { state: 'untested', last: null },
        ledger: [{ id: wrong.entry, result: 'worked', withdrawn: { reason: 'It was the other heater.' } }],
        mayTest: true,
        maySwitch: false,
        self: 'Robin Example',
      },
    });
    expect(await kinds()).toEqual(['safeguard-tested', 'test-withdrawn']);
    expect((await stored('harbour')).facility.systems[0]?.safeguards[0]?.tests).toEqual([]);
  });

  test('changes the review as tested once the job has run, and its withdrawal changes it back', async () => {
    const wrong = aTest();
    expect(await verdicts()).toEqual({ claimed: 'covered', tested: 'some-hours' });
    await recordTest(AQUARIST, wrong);
    expect(await verdicts()).toEqual({ claimed: 'covered', tested: 'covered' });
    await withdrawTest(AQUARIST, withdrawRequest.parse({ ...PLACE, test: wrong.entry, reason: 'wrong heater' }));
    expect(await verdicts()).toEqual({ claimed: 'covered', tested: 'some-hours' });
  });
});

/** What the review says of the heater that sticks on, once the worker has done what it was woken for. */
async function verdicts(): Promise<{ claimed: string; tested: string }> {
  await runOnce({ pgPool: pool(), taskList, logger: workerLogger });
  const page = await getSystem(LEAD, { site: 'harbour', system: 'tank-1' });
  if (!page.ok || page.value.state.state !== 'current') throw new Error(JSON.stringify(page));
  const stuck = page.value.review?.cases.find(({ fault }: FaultCase) => fault === 'heater-on');
  return { claimed: stuck?.claimed.verdict ?? '', tested: stuck?.tested.verdict ?? '' };
}

describe('a safeguard that is taken out of service', () => {
  test('is off until its end, with whose it is and why, and is counted on in neither column', async () => {
    await recordTest(AQUARIST, aTest());
    expect(await takeOff(LEAD, anOff())).toEqual({ ok: true, value: PLACE });
    const page = await getSafeguard(LEAD, PLACE);
    const off = { by: 'Robin', why: 'new probe', since: today, until: addDays(today, 3) };
    expect(page).toMatchObject({ value: { line: { state: 'off', off }, maySwitch: true } });
    expect((await stored('harbour')).facility.systems[0]?.safeguards[0]?.off).toEqual(off);
    expect(await verdicts()).toEqual({ claimed: 'some-hours', tested: 'some-hours' });
    const { rows } = await query("SELECT body FROM record WHERE kind = 'safeguard-off'");
    expect(rows).toMatchObject([{ body: { by: LEAD.id, why: 'new probe', until: off.until } }]);
    expect(JSON.stringify(rows)).not.toContain('Robin');
  });

  test('is put back before its end, once', async () => {
    await takeOff(LEAD, anOff());
    expect(await takeOff(LEAD, anOff())).toMatchObject({ reason: { why: 'conflict' } });
    expect(await putBack(LEAD, PLACE)).toEqual({ ok: true, value: PLACE });
    expect(await putBack(LEAD, PLACE)).toMatchObject({ reason: { why: 'conflict' } });
    expect(await kinds()).toEqual(['safeguard-off', 'safeguard-back']);
    expect((await stored('harbour')).facility.systems[0]?.safeguards[0]?.off).toBeUndefined();
  });

  test('comes back by itself after its last day, and can then be taken out again', async () => {
    await takeOff(LEAD, anOff());
    await query(
      `UPDATE safeguard SET detail = detail || '{"off":{"why":"x","since":"2020-01-01","until":"2020-01-02"}}' WHERE key = 'cut-out'`,
    );
    expect(await putBack(LEAD, PLACE)).toMatchObject({ reason: { why: 'conflict' } });
    expect(await getSafeguard(LEAD, PLACE)).toMatchObject({ value: { line: { state: 'untested' } } });
    expect(await takeOff(LEAD, anOff())).toMatchObject({ ok: true });
  });

  test('must have an end, that is not over and not before its beginning', async () => {
    expect(() => anOff({ until: undefined })).toThrow();
    expect(() => anOff({ until: addDays(today, -1) })).toThrow('before the first day');
    const past = anOff({ since: addDays(today, -9), until: addDays(today, -1) });
    expect(await takeOff(LEAD, past)).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'until' }] } });
    const endless = anOff({ until: '9999-12-31' });
    expect(await takeOff(LEAD, endless)).toMatchObject({ reason: { why: 'invalid', faults: [{ path: 'until' }] } });
  });
});

describe('who may do what', () => {
  test('is told by role: an aquarist tests, a lead switches, a viewer reads, a stranger finds nothing', async () => {
    const viewer = somebody('viewer');
    const stranger: Who = { ...viewer, at: {} };
    expect(await recordTest(viewer, aTest())).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await takeOff(AQUARIST, anOff())).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await putBack(AQUARIST, PLACE)).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await getSafeguard(viewer, PLACE)).toMatchObject({ value: { mayTest: false, maySwitch: false } });
    const nothing = { ok: false, reason: { why: 'not-found', what: 'site' } };
    for (const answer of [
      recordTest(stranger, aTest()),
      takeOff(stranger, anOff()),
      putBack(stranger, PLACE),
      getSafeguard(stranger, PLACE),
      listSafeguards(stranger, { site: 'harbour' }),
    ])
      expect(await answer).toEqual(nothing);
    expect(await kinds()).toEqual([]);
  });

  test('a safeguard that is not there is not found, nor one of a system under the site itself', async () => {
    for (const place of [
      { ...PLACE, safeguard: 'none' },
      { ...PLACE, system: '-' },
    ]) {
      expect(await putBack(LEAD, place)).toEqual({ ok: false, reason: { why: 'not-found', what: 'safeguard' } });
      expect(await getSafeguard(LEAD, place)).toMatchObject({ reason: { why: 'not-found', what: 'safeguard' } });
    }
    const own = { ...PLACE, system: '-', safeguard: 'battery' };
    expect(await getSafeguard(LEAD, own)).toMatchObject({ value: { line: { system: null, key: 'battery' } } });
    expect(await recordTest(LEAD, aTest(own))).toMatchObject({ ok: true });
  });
});
