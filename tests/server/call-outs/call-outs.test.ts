import { afterAll, beforeEach, expect, test, vi } from 'vitest';
import { makeCall, wakeLostCalls } from '#server/alarms/make-call';
import { beginCallOut } from '#server/call-outs/begin-call-out';
import { callDue } from '#server/call-outs/call-due';
import { endCallOut } from '#server/call-outs/end-call-out';
import { extendCallOut } from '#server/call-outs/extend-call-out';
import { goAlone } from '#server/call-outs/go-alone';
import { listCallOuts } from '#server/call-outs/list-call-outs';
import { type Reminder, sendReminder } from '#server/call-outs/remind';
import { seeToCallOut } from '#server/call-outs/see-to-call-out';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { type AlarmSite, after as at, alarmSite, always, warm, withAlarms } from '../alarms/alarm-site';

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
const MIN = 60;
let site: AlarmSite;
let mail: MailServer;
let robin: Who;
let lee: Who;

beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; DELETE FROM graphile_worker._private_jobs');
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  mail ??= await startMailServer();
  mail.taken.length = 0;
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  site = await alarmSite(query, withAlarms([warm()], [always('robin')]));
  robin = await site.member('Robin', 'aquarist', 'robin');
  lee = await site.member('Lee', 'lead');
  vi.mocked(now).mockReturnValue(at(0));
});
afterAll(async () => await mail.close());

/** The clock at a second. */
const clock = (second: number) => vi.mocked(now).mockReturnValue(at(second));

/** Robin, who is on call, goes in alone for half an hour. */
async function goIn(more: { named?: string } = {}): Promise<{ site: string; callOut: string }> {
  const begun = await beginCallOut(robin, { site: site.siteKey, place: 'pump room', minutes: 30, ...more });
  if (!begun.ok) throw new Error('not begun');
  return begun.value;
}

/** Does what the worker does at a second: looks who is not back, and makes the calls. @returns whom mail went to since */
async function work(second: number): Promise<string[]> {
  clock(second);
  const before = mail.taken.length;
  await callDue(at(second));
  const { rows } = await query('SELECT id FROM alarm_call ORDER BY id');
  for (const { id } of rows) await makeCall({ site: site.siteId, call: id });
  return mail.taken.slice(before).flatMap(({ to }) => to);
}

async function line(who = lee) {
  const listed = await listCallOuts(who, { site: site.siteKey });
  if (!listed.ok) throw new Error('not listed');
  return { open: listed.value.open[0], past: listed.value.past[0], mayBegin: listed.value.mayBegin };
}
const kinds = async () =>
  (await query("SELECT kind FROM record WHERE kind LIKE 'call-out%' ORDER BY seq")).rows.map(({ kind }) => kind);

test('whoever is in alone and not back in time is looked for by others, step after step, until a person says they are back', async () => {
  const out = await goIn();
  expect(await work(29 * MIN)).toEqual([]);
  expect((await line()).open).toMatchObject({ name: 'Robin', state: 'out', called: [] });
  // Nobody else is on: the leads are called at once, and never the one who is missing.
  expect(await work(30 * MIN)).toEqual(['lee@example.org']);
  expect(mail.taken[0]?.raw).toContain('Not back: Robin');
  expect(mail.taken[0]?.raw).toContain('pump room');
  expect(await work(35 * MIN)).toEqual([]);
  expect(await work(40 * MIN)).toEqual(['lee@example.org']);
  expect(await work(50 * MIN)).toEqual(['lee@example.org']);
  expect((await line()).open).toMatchObject({ state: 'overdue', called: ['Lee'], mayEnd: true });
  expect(await endCallOut(robin, out)).toMatchObject({ ok: true });
  expect(await work(70 * MIN)).toEqual([]);
  expect((await line()).past).toMatchObject({ backBy: 'Robin', state: 'back' });
  expect(await kinds()).toEqual(['call-out-begun', ...Array(3).fill('call-out-overdue'), 'call-out-back']);
});

test('more time ends the calls that were made meanwhile, and others are called anew when it is over', async () => {
  const out = await goIn();
  vi.stubEnv('HOLDFAST_MAIL_URL', 'smtp://127.0.0.1:1');
  expect(await work(30 * MIN)).toEqual([]);
  clock(31 * MIN);
  expect(await extendCallOut(lee, { ...out, minutes: 15 })).toMatchObject({
    ok: false,
    reason: { why: 'not-allowed' },
  });
  const both = await Promise.all([
    extendCallOut(robin, { ...out, minutes: 15 }),
    extendCallOut(robin, { ...out, minutes: 15 }),
  ]);
  expect(both.map(({ ok }) => ok)).toEqual([true, true]);
  expect((await query("SELECT 1 FROM call_out_event WHERE kind = 'extended'")).rows).toHaveLength(1);
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  // The call that could not be made is not made up for.
  expect(await work(40 * MIN)).toEqual([]);
  expect(await work(46 * MIN)).toEqual(['lee@example.org']);
});

test('whoever is called says that they look after it, or how they know that the other is safe; nobody else ends it', async () => {
  const kim = await site.member('Kim', 'aquarist');
  const out = await goIn({ named: kim.id });
  expect(await seeToCallOut(lee, out)).toMatchObject({ ok: false, reason: { why: 'conflict' } });
  expect(await endCallOut(lee, { ...out, note: 'seen' })).toMatchObject({ ok: false, reason: { why: 'not-allowed' } });
  await work(30 * MIN);
  expect(await seeToCallOut(robin, out)).toMatchObject({ ok: false, reason: { why: 'not-allowed' } });
  expect(await seeToCallOut(lee, out)).toMatchObject({ ok: true });
  expect((await line()).open).toMatchObject({ seenTo: 'Lee' });
  expect(await work(45 * MIN)).toEqual([]);
  expect(await work(50 * MIN)).toEqual(['lee@example.org']);
  expect(await endCallOut(lee, out)).toMatchObject({
    ok: false,
    reason: { why: 'invalid', faults: [{ path: 'note' }] },
  });
  expect(await endCallOut(kim, { ...out, note: 'spoke to her at the gate' })).toMatchObject({ ok: true });
  expect(await endCallOut(lee, { ...out, note: 'too' })).toMatchObject({ ok: false, reason: { why: 'conflict' } });
  expect((await line()).past).toMatchObject({ backBy: 'Kim', note: 'spoke to her at the gate' });
});

test('two workers that look at once call once, and a call whose worker was killed is made by another', async () => {
  await goIn();
  clock(30 * MIN);
  await Promise.all([callDue(at(30 * MIN)), callDue(at(30 * MIN)), callDue(at(30 * MIN))]);
  expect((await query('SELECT 1 FROM alarm_call')).rows).toHaveLength(1);
  // Whoever had the job is gone with it.
  await query('DELETE FROM graphile_worker._private_jobs');
  await wakeLostCalls(at(31 * MIN));
  const { rows } = await query("SELECT key FROM graphile_worker._private_jobs WHERE key LIKE 'alarm-call%'");
  expect(rows).toHaveLength(1);
});

test('by one press at night an alarm is acknowledged and somebody goes in alone for it, once', async () => {
  await site.judge(0);
  await site.send([[10, 27]]);
  await site.judge(11);
  clock(12);
  const [{ id: occurrence } = { id: '' }] = await site.open();
  const asked = { site: site.siteKey, occurrence, minutes: 30 };
  expect(await goAlone(robin, asked)).toMatchObject({ ok: true });
  expect(await site.open()).toMatchObject([{ acknowledged: true }]);
  expect((await line()).open).toMatchObject({ occurrence, name: 'Robin' });
  expect(await goAlone(robin, asked)).toMatchObject({ ok: false, reason: { why: 'conflict' } });
  expect(await line(robin)).toMatchObject({ mayBegin: false });
});

test('what happened stays: the database changes and removes nothing of it', async () => {
  await goIn();
  await expect(query("UPDATE call_out SET until_at = now() + interval '1 day'")).rejects.toThrow();
  await expect(query('DELETE FROM call_out')).rejects.toThrow();
  // Nobody but a person says that somebody is back.
  await expect(
    query(`INSERT INTO call_out_event SELECT site_id, id, id, 'back', 0, 0, now(), NULL, NULL, NULL FROM call_out`),
  ).rejects.toThrow('call_out_event_by_person');
});

test('whoever went in is reminded five minutes before, once for each time they took, and not once they are back', async () => {
  const out = await goIn();
  const reminders = async () =>
    (
      await query(
        `SELECT j.payload FROM graphile_worker._private_jobs j JOIN graphile_worker._private_tasks t ON t.id = j.task_id
          WHERE t.identifier = 'call-out-reminder' ORDER BY j.id`,
      )
    ).rows.map(({ payload }): Reminder => payload);
  await work(24 * MIN);
  expect(await reminders()).toEqual([]);
  await work(25 * MIN);
  await work(26 * MIN);
  const [first] = await reminders();
  if (!first) throw new Error('nobody was reminded');
  expect(await reminders()).toHaveLength(1);
  await sendReminder(first);
  expect(mail.taken.map(({ to }) => to)).toEqual([['robin@example.org']]);
  expect(mail.taken[0]?.raw).toContain('take more time');
  await extendCallOut(robin, { ...out, minutes: 15 });
  // Of the end before it is of no use any more.
  await sendReminder(first);
  expect(mail.taken).toHaveLength(1);
  await work(36 * MIN);
  const [, second] = await reminders();
  expect(second).toMatchObject({ channel: 'mail', callOut: out.callOut });
  expect(await work(40 * MIN)).toEqual([]);
  await endCallOut(robin, out);
  if (second) await sendReminder(second);
  expect(mail.taken).toHaveLength(1);
});
