import { Webhook } from 'standardwebhooks';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { addPushDevice, listPushDevices } from '#data/calls/push-devices';
import { addWebhook } from '#data/calls/webhooks';
import { inTransaction } from '#data/transaction';
import { makeCall } from '#server/alarms/make-call';
import { signedRequest } from '#server/calls/by-webhook';
import { pushKeys } from '#server/calls/push-keys';
import { sealSecret, sealWebhooks } from '#server/calls/webhook-secret';
import { now } from '#server/clock';
import type { Who } from '#server/gate/who';
import { type CallReceiver, startCallReceiver } from '../../_support/call-receiver';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { type AlarmSite, after as at, alarmSite, always, warm, withAlarms } from '../alarms/alarm-site';
import { openVapid, testBrowser } from './open-push';

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
const { anew } = describedSite(query);
/** The keys of the receiver in RFC 8291, section 5. */
const BROWSER = testBrowser({
  privateKey: 'q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94',
  auth: 'BTBZMqHH6r4Tts7J_aSIgg',
});
const SECRET = 'whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw';
let site: AlarmSite;
let mail: MailServer;
let service: CallReceiver;
let robin: Who;

beforeEach(async () => {
  await anew();
  await query('DELETE FROM membership; DELETE FROM graphile_worker._private_jobs; DELETE FROM push_device');
  await query("UPDATE account SET email = id || '@gone.example', ended_at = now()");
  mail = await startMailServer();
  service = await startCallReceiver();
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  vi.stubEnv('HOLDFAST_CALL_HOSTS', service.host);
  vi.stubEnv('HOLDFAST_SECRET', 'a secret of this test, long enough for it');
  site = await alarmSite(query, withAlarms([warm()], [always('robin')]));
  robin = await site.member('Robin', 'aquarist', 'robin');
});
afterEach(async () => {
  vi.unstubAllEnvs();
  await mail.close();
  await service.close();
});

/** Raises the alarm, and makes each call of it that is due at a second. */
async function raise(): Promise<void> {
  await site.judge(0);
  await site.send([[10, 27]]);
  await site.judge(11);
}
async function work(atS: number): Promise<void> {
  vi.mocked(now).mockReturnValue(at(atS));
  const { rows } = await query('SELECT id FROM alarm_call ORDER BY channel');
  for (const { id } of rows) await makeCall({ site: site.siteId, call: id });
}
const tries = async () =>
  (
    await query(
      'SELECT c.channel, t.result, t.detail FROM alarm_call_try t JOIN alarm_call c ON c.id = t.call_id ORDER BY c.channel, t.at',
    )
  ).rows;
function sealed(): Uint8Array<ArrayBuffer> {
  const secret = sealSecret(SECRET);
  if (!secret.ok) throw new Error(secret.reason);
  return secret.value;
}
const webhook = () =>
  inTransaction((tx) =>
    addWebhook(tx, site.siteId, { url: `${service.url}/hook`, secretSealed: sealed(), by: robin.id }, at(0)),
  );
const device = (path = '/push') =>
  addPushDevice(
    robin.id,
    { endpoint: service.url + path, p256dh: BROWSER.p256dh, auth: BROWSER.auth },
    `phone ${path}`,
    at(0),
  );

test('whoever is called is called by every way there is to them, each with its own word of how that went', async () => {
  await webhook();
  await device();
  await raise();
  await work(12);
  expect(await tries()).toEqual(
    ['mail', 'push', 'webhook'].map((channel) => ({ channel, result: 'taken', detail: null })),
  );
  const [row] = (await query("SELECT id FROM alarm_call WHERE channel = 'mail'")).rows;
  expect(mail.taken[0]?.raw).toContain(`Message-ID: <${row.id}@`);
  await work(13);
  expect([mail.taken.length, service.posted.length]).toEqual([1, 2]);
});

describe('a webhook', () => {
  // The vector of Standard Webhooks 1.0, as its libraries have it in their own tests.
  test('is signed as the standard says', () => {
    vi.mocked(now).mockReturnValue(new Date(1614265330 * 1000));
    expect(new Webhook(SECRET).sign('msg_p5jXN8AQM9LWM0D4loKWxJek', now(), '{"test": 2432232314}')).toBe(
      'v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=',
    );
    const message = {
      type: 'alarm.test',
      data: {},
      short: 's',
      text: 't',
      url: 'u',
      subject: 'x',
      about: 'y',
    } as const;
    const { headers, body } = signedRequest(SECRET, { id: 'one', madeAt: at(0) }, message);
    expect(headers['webhook-signature']).toBe(new Webhook(SECRET).sign('one', now(), body));
  });

  test('is told who is to be told and of what, in words and for machines, and can be verified', async () => {
    await webhook();
    await raise();
    vi.useFakeTimers({ toFake: ['Date'], now: at(12) });
    await work(12);
    const [{ headers, body } = { headers: {}, body: Buffer.from('') }] = service.posted;
    const told = new Webhook(SECRET).verify(body, headers as Record<string, string>) as Record<string, never>;
    expect(told).toMatchObject({
      type: 'alarm.call',
      data: {
        to: { name: 'Robin', why: 'on-call', step: 1 },
        alarm: { name: 'Too warm' },
        site: { key: site.siteKey },
      },
    });
    expect(() => new Webhook(SECRET).verify(`${body} `, headers as Record<string, string>)).toThrow();
    vi.useRealTimers();
  });

  test('that fails is tried again with the same id and body, so that a repeat can be told', async () => {
    await webhook();
    await raise();
    service.answer(503);
    await work(12);
    service.answer(200);
    await work(18);
    expect((await tries()).filter(({ channel }) => channel === 'webhook').map(({ result }) => result)).toEqual([
      'failed',
      'taken',
    ]);
    const [first, second] = service.posted;
    expect(first?.headers['webhook-id']).toBe(second?.headers['webhook-id']);
    expect(first?.body).toEqual(second?.body);
  });

  test('has its secret sealed, one from before secrets were as well, and signs with none that it cannot read', async () => {
    await webhook();
    const told = async () => (await query('SELECT call_webhook::text AS said, secret FROM call_webhook')).rows;
    expect((await told())[0].said).not.toContain(SECRET);
    await query('UPDATE call_webhook SET secret = $1, secret_sealed = NULL', [SECRET]);
    await sealWebhooks();
    expect(await told()).toMatchObject([{ secret: null }]);
    await raise();
    vi.stubEnv('HOLDFAST_SECRET', 'another secret of this test, long enough');
    await work(12);
    expect(service.posted).toEqual([]);
    expect((await tries()).at(-1)).toMatchObject({
      channel: 'webhook',
      result: 'failed',
      detail: expect.stringContaining('anew'),
    });
    vi.stubEnv('HOLDFAST_SECRET', 'a secret of this test, long enough for it');
    await work(18);
    expect(service.posted).toHaveLength(1);
  });

  test('in a private network is not called, and it is said why', async () => {
    vi.stubEnv('HOLDFAST_CALL_HOSTS', '');
    await webhook();
    await raise();
    await work(12);
    expect(service.posted).toEqual([]);
    expect((await tries()).at(-1)).toMatchObject({
      channel: 'webhook',
      result: 'failed',
      detail: expect.stringContaining('https'),
    });
  });
});

describe('browser push', () => {
  test('is opened by the browser alone, signed by our keys, urgent, and replaces what is about the same alarm', async () => {
    await device();
    await raise();
    await work(12);
    const [sent] = service.posted;
    const [{ id } = { id: '' }] = await site.open();
    expect(JSON.parse(BROWSER.open(sent?.body ?? Buffer.from('')))).toMatchObject({
      title: 'Alarm: Too warm, Tank 1',
      url: expect.stringContaining(`/alarms/${id}`),
      tag: id,
    });
    expect(sent?.headers).toMatchObject({
      urgency: 'high',
      topic: id.replaceAll('-', ''),
      'content-encoding': 'aes128gcm',
    });
    expect(Number(sent?.headers.ttl)).toBeGreaterThan(0);
    const { key, claims } = openVapid(sent?.headers.authorization ?? '');
    expect(key).toBe((await pushKeys()).publicKey);
    expect(claims.aud).toBe(service.url);
    expect(Number(claims.exp) - Date.now() / 1000).toBeLessThanOrEqual(86_400);
  });

  test('keeps one pair of keys, whoever makes them first', async () => {
    await query('DELETE FROM push_key');
    const all = await Promise.all([pushKeys(), pushKeys(), pushKeys()]);
    expect(new Set(all.map(({ publicKey }) => publicKey)).size).toBe(1);
  });

  test('seals the private key: the database cannot tell it, and another secret does not read it', async () => {
    await query('DELETE FROM push_key');
    const { publicKey, privateKey } = await pushKeys();
    const { rows } = await query('SELECT push_key::text AS said, private_key_sealed AS sealed FROM push_key');
    expect(rows[0].said).not.toContain(privateKey);
    expect(rows[0].sealed.includes(Buffer.from(privateKey))).toBe(false);
    vi.stubEnv('HOLDFAST_SECRET', 'another secret of this test, long enough');
    await expect(pushKeys()).rejects.toThrow('another HOLDFAST_SECRET');
    vi.stubEnv('HOLDFAST_SECRET', 'a secret of this test, long enough for it');
    // One from before such keys were sealed goes on, and is sealed the next time it is used.
    await query('UPDATE push_key SET private_key = $1, private_key_sealed = NULL', [privateKey]);
    expect(await pushKeys()).toEqual({ publicKey, privateKey });
    expect((await query('SELECT private_key AS key FROM push_key')).rows).toEqual([{ key: null }]);
    expect(await pushKeys()).toEqual({ publicKey, privateKey });
  });

  test('forgets a browser that its service knows no more, and says so', async () => {
    await device();
    await raise();
    service.answer(410);
    await work(12);
    expect((await tries()).at(-1)).toMatchObject({ channel: 'push', result: 'no-way' });
    expect(await listPushDevices(robin.id)).toEqual([]);
  });

  test('is of whoever added the browser last', async () => {
    await device();
    const kim = await site.member('Kim', 'aquarist');
    await addPushDevice(
      kim.id,
      { endpoint: `${service.url}/push`, p256dh: BROWSER.p256dh, auth: BROWSER.auth },
      'shared',
      at(1),
    );
    expect((await listPushDevices(robin.id)).length + (await listPushDevices(kim.id)).length).toBe(1);
  });
});

test('the receiver of the test opens what RFC 8291 seals in its section 5', () => {
  const sealed =
    'DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN';
  expect(BROWSER.open(Buffer.from(sealed, 'base64url'))).toBe('When I grow up, I want to be a watermelon');
});
