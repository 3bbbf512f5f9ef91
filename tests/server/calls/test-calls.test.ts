import { afterAll, beforeEach, expect, test, vi } from 'vitest';
import { isTested } from '#core/plans/credit';
import { answerTestCall } from '#server/calls/answer-test-call';
import { dueTestCalls } from '#server/calls/due-test-calls';
import { listCalls } from '#server/calls/list-calls';
import { missedTests } from '#server/calls/missed-tests';
import { makeTestCall } from '#server/calls/make-test-call';
import { acknowledgeAlarm } from '#server/alarms/acknowledge-alarm';
import { makeCall } from '#server/alarms/make-call';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { storedSite } from '#server/reviews/stored-site';
import { findSite } from '#data/sites';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { type AlarmSite, after as at, alarmSite, always, warm } from '../alarms/alarm-site';

vi.mock('#server/clock', async (original) => {
  const real = await original<typeof import('#server/clock')>();
  return { now: vi.fn(real.now) };
});
vi.mock('#server/env', async (original) => {
  const real = await original<typeof import('#server/env')>();
  return { ...real, env: real.commandEnv };
});

const { query } = freshDatabase();
const { anew } = describedSite(query);
const DAY_S = 86_400;
let site: AlarmSite;
let mail: MailServer;
let robin: Who;

beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; DELETE FROM graphile_worker._private_jobs');
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  mail ??= await startMailServer();
  mail.taken.length = 0;
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  const way = { key: 'way', name: 'Way', kind: 'alarm' as const, testEveryDays: 30, tests: [] };
  const system = { ...smallSystem(), safeguards: [way], alarms: [warm({ safeguard: 'way' })] };
  site = await alarmSite(query, { ...smallFacility(system), shifts: [always('robin')] });
  robin = await site.member('Robin', 'aquarist', 'robin');
  await site.member('Vic', 'viewer');
});
afterAll(async () => await mail.close());

/** Calls whoever is due at a second, by the worker's task and its jobs. */
async function work(atS: number): Promise<void> {
  vi.mocked(now).mockReturnValue(at(atS));
  await dueTestCalls(at(atS));
  const { rows } = await query('SELECT id FROM alarm_call');
  for (const { id } of rows) await makeCall({ site: site.siteId, call: id });
}
async function page(who = robin) {
  const listed = await listCalls(who, { site: site.siteKey });
  if (!listed.ok) throw new Error('not listed');
  return listed.value;
}
const states = async () =>
  (await page()).people.map(({ name, state, reachedBy }) => `${name} ${state} ${reachedBy ?? '-'}`);
/** Whether the way of the alarm counts as tested to a review on the day of a second. */
async function counts(atS: number): Promise<boolean> {
  const entry = await findSite(site.siteKey);
  const on = at(atS).toISOString().slice(0, 10);
  const stored = entry && (await storedSite(entry, on));
  const way = stored?.reviewed.systems[0]?.safeguards[0];
  expect(stored?.facility.systems[0]?.safeguards[0]?.tests).toEqual([]);
  return way !== undefined && isTested(way, on);
}

test('goes to whoever would be called, is theirs alone to answer, and then counts in the review until it is too old', async () => {
  expect(await states()).toEqual(['Robin never -']);
  await work(0);
  await work(600);
  expect(mail.taken.map(({ to }) => to)).toEqual([['robin@example.org']]);
  expect(mail.taken[0]?.raw).toContain('Subject: Test call');
  const { ownTest } = await page();
  const answer = { site: site.siteKey, test: ownTest ?? '', by: 'mail' as const };
  const lee = await site.member('Lee', 'lead');
  expect(await answerTestCall(lee, answer)).toMatchObject({ ok: false, reason: { why: 'not-found' } });
  expect(await counts(600)).toBe(false);
  expect(await answerTestCall(robin, answer)).toMatchObject({ ok: true });
  expect(await answerTestCall(robin, answer)).toMatchObject({ ok: true });
  expect(await states()).toEqual(['Lee never -', 'Robin reached test']);
  expect([await counts(600), await counts(30 * DAY_S), await counts(31 * DAY_S)]).toEqual([true, true, false]);
  const { rows } = await query("SELECT kind FROM record WHERE kind LIKE 'test-call%' ORDER BY seq");
  expect(rows.map(({ kind }) => kind)).toEqual(['test-call-made', 'test-call-answered']);
});

test('that is missed is said to be, is made again each day, and is tried no more once it is over', async () => {
  vi.stubEnv('HOLDFAST_MAIL_URL', 'smtp://127.0.0.1:1');
  await work(0);
  expect(await states()).toEqual(['Robin asked -']);
  vi.mocked(now).mockReturnValue(at(DAY_S));
  expect(await states()).toEqual(['Robin missed -']);
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  await work(DAY_S + 60);
  expect(mail.taken).toHaveLength(1);
  expect((await query('SELECT 1 FROM test_call')).rows).toHaveLength(2);
});

test('that is missed stands on the pages of people and rota, also while they are called once more, until they answer', async () => {
  const missed = async () => {
    const answer = await missedTests(robin, { site: site.siteKey });
    return answer.ok ? answer.value.map(({ name, tests, madeAt }) => `${name} ${tests} ${madeAt}`) : answer;
  };
  await work(0);
  expect(await missed()).toEqual([]);
  await work(DAY_S + 60);
  expect(await missed()).toEqual([`Robin 1 ${at(0).toISOString()}`]);
  await work(2 * DAY_S + 120);
  expect(await missed()).toEqual([`Robin 2 ${at(DAY_S + 60).toISOString()}`]);
  const { ownTest } = await page();
  expect(await answerTestCall(robin, { site: site.siteKey, test: ownTest ?? '', by: 'mail' })).toMatchObject({
    ok: true,
  });
  expect(await missed()).toEqual([]);
});

test('is not needed by whoever acknowledged an alarm they had been told of, and that counts in the review too', async () => {
  await site.judge(0);
  await site.send([[10, 27]]);
  await site.judge(11);
  const { rows } = await query('SELECT id FROM alarm_call');
  vi.mocked(now).mockReturnValue(at(12));
  for (const { id } of rows) await makeCall({ site: site.siteId, call: id });
  const [{ id } = { id: '' }] = await site.open();
  await acknowledgeAlarm(robin, { site: site.siteKey, occurrence: id, page: 'alarm' });
  await work(60);
  expect([await states(), await counts(60)]).toEqual([['Robin reached alarm'], true]);
  expect((await query('SELECT 1 FROM test_call')).rows).toHaveLength(0);
});

test('is made at once for whoever asks for themselves, and for others by whoever describes the site', async () => {
  const lee = await site.member('Lee', 'lead');
  expect(await makeTestCall(robin, { site: site.siteKey })).toMatchObject({ ok: true });
  expect(await makeTestCall(robin, { site: site.siteKey, account: lee.id })).toMatchObject({ ok: false });
  expect(await makeTestCall(lee, { site: site.siteKey, account: robin.id })).toMatchObject({ ok: true });
  expect((await query('SELECT 1 FROM test_call')).rows).toHaveLength(2);
});
