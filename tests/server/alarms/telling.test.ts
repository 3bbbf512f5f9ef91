import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { makeCall, wakeLostCalls as findLost } from '#server/alarms/make-call';
import { now } from '#server/clock';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { after as at, alarmSite, type AlarmSite, always, warm, withAlarms } from './alarm-site';

vi.mock('#server/clock', async (original) => {
  const real = await original<typeof import('#server/clock')>();
  return { now: vi.fn(real.now) };
});

// A process reads its environment once; here mail comes and goes.
vi.mock('#server/env', async (original) => {
  const real = await original<typeof import('#server/env')>();
  return { ...real, env: real.commandEnv };
});

const { query } = freshDatabase();
const { anew } = describedSite(query);
let site: AlarmSite;
let mail: MailServer;

beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; DELETE FROM graphile_worker._private_jobs');
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  mail = await startMailServer();
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await mail.close();
});

async function raised(given: Parameters<typeof warm>[0] = {}, shifts = [always('robin')]): Promise<void> {
  site = await alarmSite(query, withAlarms([warm(given)], shifts));
  await site.member('Robin', 'aquarist', 'robin');
  await site.member('Lee', 'lead');
  await site.member('Max', 'manager');
  await site.judge(0);
  await site.send([[10, 27]]);
  await site.judge(11);
}

/** Carries out what waits, as the worker would at a second. */
async function work(atS: number): Promise<void> {
  vi.mocked(now).mockReturnValue(at(atS));
  const { rows } = await query(
    `DELETE FROM graphile_worker._private_jobs j USING graphile_worker._private_tasks t
      WHERE t.id = j.task_id AND t.identifier = 'make-call' AND (j.run_at <= $1::timestamptz OR j.run_at > now() - interval '1 hour') RETURNING j.payload`,
    [at(atS)],
  );
  for (const { payload } of rows) await makeCall(payload);
}
const tries = async () =>
  (await query('SELECT result, detail FROM alarm_call_try ORDER BY at, id')).rows as {
    result: string;
    detail: string | null;
  }[];

describe('whoever is on', () => {
  test('is told by mail: what, where, value and limit, since when, who else, and where to acknowledge', async () => {
    await raised();
    expect(await site.calls()).toEqual([{ name: 'Robin', why: 'on-call', step: 1 }]);
    await work(12);
    expect(mail.taken.map(({ to }) => to)).toEqual([['robin@example.org']]);
    const text =
      mail.taken[0]?.raw
        .replace(/=\r\n/g, '')
        .replace(/=C2=A0/g, ' ')
        .replace(/=C2=B0/g, '°') ?? '';
    expect(text).toContain('Subject: Alarm: Too warm, Tank 1');
    expect(text).toContain('Value: 27.0 °C, called above 26.5 °C');
    expect(text).toContain('Nobody else is told.');
    const [{ id } = { id: '' }] = await site.open();
    expect(text).toContain(`/sites/${site.siteKey}/alarms/${id}`);
    expect(await tries()).toEqual([{ result: 'taken', detail: null }]);
    await work(13);
    expect(mail.taken.length).toBe(1);
  });

  test('then leads, then everyone, while nobody acknowledges, each step once', async () => {
    await raised({ escalateAfterMin: 5 });
    await site.judge(310);
    expect((await site.calls()).length).toBe(1);
    await site.judge(311);
    await site.judge(312);
    expect(await site.calls()).toEqual([
      { name: 'Robin', why: 'on-call', step: 1 },
      { name: 'Lee', why: 'lead', step: 2 },
    ]);
    expect(await site.open()).toMatchObject([{ step: 2, next: at(11 + 1200) }]);
    await site.judge(1211);
    expect((await site.calls()).slice(2).map(({ name, step }) => `${name} ${step}`)).toEqual([
      'Lee 3',
      'Max 3',
      'Robin 3',
    ]);
    expect((await site.events()).map(({ kind, detail }) => `${kind} ${detail.step}`)).toEqual([
      'raised 1',
      'escalated 2',
      'escalated 3',
    ]);
    expect(await site.open()).toMatchObject([{ step: 3, next: at(1211 + 900) }]);
  });

  test('and everyone of the last step again, a quarter of an hour after they were called, until somebody acknowledges', async () => {
    await raised({}, []);
    const all = ['Lee', 'Max'];
    const told = async (step: number) =>
      (await site.calls()).filter((one) => one.step === step).map(({ name }) => name);
    await site.judge(911);
    expect(await told(4)).toEqual(all);
    // A worker that was away catches up on nothing.
    await site.judge(9000);
    expect([await told(5), await told(6)]).toEqual([all, []]);
    expect((await site.events()).at(-1)?.detail).toEqual({ step: 5, why: 'lead', told: 2, repeated: true });
    await query('UPDATE alarm_open SET acknowledged = true');
    await site.judge(9000 + 900);
    expect(await told(6)).toEqual([]);
  });

  test('but not of what is back to normal by itself', async () => {
    await raised({}, []);
    await site.send([[600, 25]]);
    await site.judge(601);
    await site.judge(911);
    expect((await site.calls()).map(({ step }) => step)).toEqual([3, 3]);
    expect(await site.open()).toMatchObject([{ step: 3, next: null }]);
  });

  test('fifteen minutes is in time where nothing else is said', async () => {
    await raised();
    const [row] = await site.open();
    expect(row?.next).toEqual(at(11 + 900));
  });
});

describe('where nobody is on', () => {
  test('leads and managers are told at once, and it is said', async () => {
    await raised({}, []);
    expect((await site.calls()).map(({ name, why, step }) => `${name} ${why} ${step}`)).toEqual([
      'Lee nobody-on 3',
      'Max nobody-on 3',
    ]);
    expect((await site.events()).find(({ kind }) => kind === 'escalated')?.detail).toEqual({
      step: 3,
      why: 'nobody-on',
      told: 2,
    });
  });

  test('and where nobody is to answer, nobody is told, now or later', async () => {
    await raised({ answeredBy: 'nobody' });
    await site.judge(5000);
    expect(await site.calls()).toEqual([]);
    expect((await site.events())[0]?.detail).toEqual({ answeredBy: 'nobody' });
  });
});

describe('a mail server', () => {
  test('that fails is tried again after 5 s, 15 s and so on, each attempt noted, until it takes it', async () => {
    await raised();
    vi.stubEnv('HOLDFAST_MAIL_URL', 'smtp://127.0.0.1:1');
    await work(12);
    await work(14);
    expect((await tries()).map(({ result }) => result)).toEqual(['failed']);
    await work(17);
    vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
    await work(32);
    expect((await tries()).map(({ result }) => result)).toEqual(['failed', 'failed', 'taken']);
    expect(mail.taken.length).toBe(1);
  });

  test('that was never set up leaves a mark on the alarm, and the call waits for one', async () => {
    await raised();
    vi.stubEnv('HOLDFAST_MAIL_URL', '');
    await work(12);
    expect(await tries()).toEqual([{ result: 'no-way', detail: 'no mail is sent from here' }]);
    vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
    await work(12 + 600);
    expect(mail.taken.length).toBe(1);
  });

  test('that was away for an hour gets one message for each person, that of the newest call', async () => {
    await raised({}, []);
    vi.stubEnv('HOLDFAST_MAIL_URL', 'smtp://127.0.0.1:1');
    await work(12);
    for (const minute of [15, 30, 45]) await site.judge(11 + minute * 60);
    vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
    await work(11 + 46 * 60);
    expect(mail.taken).toHaveLength(2);
    expect(await site.calls()).toHaveLength(8);
  });

  test('is asked again for a call whose job was lost with its worker', async () => {
    await raised();
    await query('DELETE FROM graphile_worker._private_jobs');
    await findLost(at(18));
    await work(18);
    expect(mail.taken).toEqual([]);
    await findLost(at(20));
    await findLost(at(21));
    await work(21);
    expect(mail.taken.length).toBe(1);
  });

  test('is told once by a process that is asked for the same call again while it is at it', async () => {
    await raised();
    const { rows } = await query('SELECT id FROM alarm_call');
    vi.mocked(now).mockReturnValue(at(12));
    const call = { site: site.siteId, call: String(rows[0]?.id) };
    await Promise.all([makeCall(call), makeCall(call)]);
    expect(mail.taken.length).toBe(1);
    expect(await tries()).toHaveLength(1);
  });
});

test('who was to answer stands with an alarm by their id: what is never changed again names nobody', async () => {
  await raised({ answeredBy: ['robin'] });
  const { rows } = await query(
    `SELECT o.definition->'answeredBy' AS "by", (SELECT jsonb_agg(p.id) FROM person p
       WHERE p.site_id = o.site_id AND p.key = 'robin') AS ids, o.definition::text AS text FROM alarm_occurrence o`,
  );
  expect(rows).toHaveLength(1);
  expect(rows[0].by).toEqual(rows[0].ids);
  expect(rows[0].text).not.toContain('robin');
});
