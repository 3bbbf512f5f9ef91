import { afterAll, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { newId } from '#data/new-id';
import { findOccurrence } from '#data/alarms/told';
import { verifyChain } from '#data/records/verify-chain';
import { acknowledgeAlarm } from '#server/alarms/acknowledge-alarm';
import { callForHelp, callForHelpShape } from '#server/alarms/call-for-help';
import { callText } from '#server/alarms/call-text';
import { rightAgain } from '#server/alarms/right-again';
import type { Who } from '#server/gate/who';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { stored } from '../../_support/stored';
import { type AlarmSite, alarmSite, always, after as at, warm, withAlarms } from './alarm-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;
let robin: Who;
let lee: Who;

beforeAll(() => vi.useFakeTimers({ toFake: ['Date'], now: at(0) }));
afterAll(() => vi.useRealTimers());
beforeEach(async () => {
  vi.setSystemTime(at(0));
  await anew();
  await query('DELETE FROM membership; UPDATE account SET email = id || $$@gone.example$$');
  site = await alarmSite(query, withAlarms([warm()], [always('robin')]));
  robin = await site.member('Robin', 'aquarist', 'robin');
  lee = await site.member('Lee', 'lead');
});

const WET = { system: 'tank-1', what: 'Water on the floor', saw: 'It runs from under the sump.', where: 'Pump room' };
const call = (more: object = {}, who = robin, seenAt: Date | null = null) =>
  callForHelp(who, callForHelpShape.parse({ site: site.siteKey, call: newId(), ...WET, ...more }), seenAt);
/** Calls, and gives the time the alarm was raised. */
async function raised(more: object = {}): Promise<{ site: string; occurrence: string }> {
  const answer = await call(more);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return { site: site.siteKey, occurrence: answer.value.occurrence };
}
const kinds = async () => (await site.events()).map(({ kind }) => kind);
const later = async (second: number) => {
  vi.setSystemTime(at(second));
  await site.judge(second);
};

test('help is called once however often it is sent, and never by calling whoever called', async () => {
  const id = newId();
  const answers = await Promise.all([call({ call: id }), call({ call: id })]);
  const told = answers.flatMap((answer) => (answer.ok ? [answer.value] : []));
  expect(told.map(({ isRepeat }) => isRepeat).sort()).toEqual([false, true]);
  expect(new Set(told.map(({ occurrence }) => occurrence)).size).toBe(1);
  expect(told.map(({ told: names }) => names)).toEqual([['Lee'], ['Lee']]);
  expect(new Set((await site.calls()).map(({ name }) => name))).toEqual(new Set(['Lee']));
  expect(await call({ call: id }, lee)).toMatchObject({ reason: { why: 'conflict' } });
  expect((await query('SELECT count(*)::int AS n FROM alarm_occurrence')).rows[0].n).toBe(1);
});

test('what was called by hand is answered, calls again, and is over once a person says that it is right again', async () => {
  const place = await raised();
  await later(30 * 60);
  expect(await kinds()).toContain('escalated');
  await acknowledgeAlarm(lee, { ...place, page: 'alarm' });
  await later(61 * 60);
  expect((await kinds()).at(-1)).toBe('recalled');
  expect(await rightAgain(robin, { ...place, note: 'Union tightened, floor dry.' })).toMatchObject({ ok: true });
  expect(await site.open()).toEqual([]);
  const [seen, ended] = (await site.events()).slice(-2);
  expect([seen, ended]).toMatchObject([
    { kind: 'acknowledged', by: robin.id },
    { kind: 'returned', by: robin.id },
  ]);
  expect(await rightAgain(robin, { ...place, note: 'Again' })).toMatchObject({ reason: { why: 'conflict' } });
  await later(120 * 60);
  expect(await site.open()).toEqual([]);
  expect(await verifyChain(site.siteId)).toMatchObject({ isWhole: true });
});

test('two who see two things call for both, beside what readings raised, and a description keeps neither', async () => {
  const before = (await stored(site.siteKey)).facility;
  await site.send([[0, 28]]);
  await later(1);
  vi.setSystemTime(at(2));
  await raised();
  await raised({ what: 'Smell of burning' });
  expect((await site.open()).length).toBe(3);
  expect((await stored(site.siteKey)).facility).toEqual(before);
  const [byReading] = await site.open();
  expect(await rightAgain(lee, { site: site.siteKey, occurrence: byReading?.id ?? '', note: 'Done' })).toMatchObject({
    reason: { why: 'conflict', now: expect.stringContaining('Readings raised') },
  });
});

test('whoever is called reads who called, where and what was seen, and since when', async () => {
  const seen = at(-3600);
  const answer = await call({}, robin, seen);
  const told = await findOccurrence(site.siteId, answer.ok ? answer.value.occurrence : '');
  if (!told) throw new Error('no alarm');
  expect(told.beganAt).toEqual(seen);
  expect((await query("SELECT by, note FROM alarm_event WHERE kind = 'raised'")).rows).toEqual([
    { by: robin.id, note: WET.saw },
  ]);
  const { text, subject } = callText(told, { to: 'Lee', why: 'nobody-on', step: 3, others: [], caller: 'Robin' });
  expect(subject).toBe('Alarm: Water on the floor, Tank 1');
  for (const said of ['Robin called for help.', 'Where: Pump room', 'Seen: It runs from under the sump.'])
    expect(text).toContain(said);
});

test('nothing is called without a word for it, for a system that is not there, or by who may only look', async () => {
  expect(callForHelpShape.safeParse({ site: 'x', call: newId(), system: 'tank-1', what: ' \n ' }).success).toBe(false);
  expect(await call({ system: 'no-such' })).toMatchObject({ reason: { why: 'not-found', what: 'system' } });
  expect(await call({}, await site.member('Vi', 'viewer'))).toMatchObject({ reason: { why: 'not-allowed' } });
  expect(await site.open()).toEqual([]);
});
