import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { GET } from '../../app/api/health/route';
import { now } from '#server/clock';
import { LOCAL_PERSON } from '#server/gate/who';
import { pingOutside } from '#server/health/ping-outside';
import { reportHealth } from '#server/health/report';
import { watchMail } from '#server/health/watch-mail';
import { machineNote } from '#server/machine/machine-note';
import { freshDatabase } from '../_support/database';
import { type MailServer, startMailServer } from '../_support/mail-server';
import { after as at, type AlarmSite, alarmSite, always, warm, withAlarms } from './alarms/alarm-site';

vi.mock('#server/clock', async (original) => {
  const real = await original<typeof import('#server/clock')>();
  return { now: vi.fn(real.now) };
});
// A process reads its environment once; here services come and go.
vi.mock('#server/env', async (original) => {
  const real = await original<typeof import('#server/env')>();
  return { ...real, env: real.commandEnv };
});

const { query } = freshDatabase();
let site: AlarmSite;
let outside: Server;
let asked = 0;
let mail: MailServer;
const clock = (atS: number) => vi.mocked(now).mockReturnValue(at(atS));

beforeAll(async () => {
  mail = await startMailServer();
  outside = createServer((_, response) => {
    asked += 1;
    response.end();
  }).listen(0, '127.0.0.1');
  site = await alarmSite(query, withAlarms([warm()], [always('robin')]));
  await site.member('Robin', 'aquarist', 'robin');
  await site.judge(0);
});
beforeEach(() => {
  vi.stubEnv('HOLDFAST_PING_URL', `http://127.0.0.1:${(outside.address() as AddressInfo).port}/`);
});
afterAll(async () => {
  outside.close();
  await mail.close();
});
const note = async () => {
  const answer = await machineNote(LOCAL_PERSON);
  return answer.ok ? answer.value.watch : null;
};
const asksAlarms = async () => (await GET(new Request('http://localhost/api/health?of=alarms'))).status;

describe('a worker that judges no more', () => {
  test('is noticed by the web process within minutes, on every page and by whoever asks', async () => {
    clock(60);
    expect([await note(), (await reportHealth()).alarms, await asksAlarms()]).toEqual([null, 'judged', 200]);
    clock(121);
    expect(await note()).toEqual({ kind: 'not-judged', since: at(0).toISOString() });
    expect([(await reportHealth()).alarms, await asksAlarms()]).toEqual(['not judged', 503]);
  });

  test('is noticed outside: the address there is asked only while alarms are judged', async () => {
    clock(60);
    await pingOutside();
    expect([asked, (await reportHealth()).outside]).toEqual([1, 'up']);
    clock(121);
    await pingOutside();
    expect([asked, (await reportHealth()).outside]).toEqual([1, 'down']);
  });
});

test('who waits to be told is counted, and when nobody can be for ten minutes the address outside is left alone', async () => {
  await site.send([[130, 27]]);
  await site.judge(131);
  clock(140);
  expect(await reportHealth()).toMatchObject({ callsWaiting: 1, oldestCallAt: at(131).toISOString() });
  await pingOutside();
  expect(asked).toBe(2);
  await site.judge(131 + 601);
  clock(131 + 602);
  await pingOutside();
  expect(asked).toBe(2);
});

test('a mail server that takes nothing is known before somebody has to be told', async () => {
  expect((await reportHealth()).mail).toBe('not set up');
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  await watchMail();
  expect([(await reportHealth()).mail, await note()]).toEqual(['up', null]);
  vi.stubEnv('HOLDFAST_MAIL_URL', 'smtp://127.0.0.1:1');
  await watchMail();
  expect((await reportHealth()).mail).toBe('down');
  expect(await note()).toMatchObject({ kind: 'mail', since: at(131 + 602).toISOString() });
  expect(mail.taken).toEqual([]);
});
