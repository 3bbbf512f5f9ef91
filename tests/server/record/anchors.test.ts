import { createHmac } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { createServer, type IncomingHttpHeaders, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { run } from 'graphile-worker';
import { simpleParser } from 'mailparser';
import { Webhook } from 'standardwebhooks';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { pool } from '#data/pool';
import type { Who } from '#server/gate/who';
import { readAnchors } from '#shape/record/anchor';
import { freshDatabase } from '../../_support/database';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { keep } from '../../_support/stored';
import { smallFacility } from '../../_support/small-facility';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const folder = temporaryFolder();
const file = join(folder, 'anchors.txt');
const SECRET = `whsec_${Buffer.alloc(32, 7).toString('base64')}`;
const MANAGER: Who = { id: 'somebody', name: 'Manager', everywhere: null, at: { harbour: 'manager' } };
const at = (day: string) => new Date(`${day}T00:10:00Z`);

let mail: MailServer;
let web: Server;
let posted: { headers: IncomingHttpHeaders; body: string }[] = [];
let status = 204;
let site = '';

beforeAll(async () => {
  await keep(smallFacility());
  site = (await query('SELECT id FROM site')).rows[0].id;
  mail = await startMailServer();
  web = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      posted.push({ headers: request.headers, body: Buffer.concat(parts).toString() });
      response.writeHead(status, status === 302 ? { location: '/elsewhere' } : {}).end();
    });
  });
  await new Promise<void>((done) => web.listen(0, '127.0.0.1', done));
});
afterAll(async () => {
  await mail.close();
  await new Promise((done) => web.close(done));
});

beforeEach(() => {
  status = 204;
  posted = [];
  vi.resetModules();
  vi.stubEnv('HOLDFAST_MAIL_URL', mail.url);
  vi.stubEnv('HOLDFAST_MAIL_FROM', 'watch@aquarium.example');
  vi.stubEnv('HOLDFAST_ANCHOR_FILE', file);
  vi.stubEnv('HOLDFAST_ANCHOR_MAIL', 'papers@elsewhere.example');
  vi.stubEnv('HOLDFAST_ANCHOR_WEBHOOK', `http://127.0.0.1:${(web.address() as AddressInfo).port}/anchors?key=quiet`);
  vi.stubEnv('HOLDFAST_ANCHOR_SECRET', SECRET);
});
afterEach(() => vi.unstubAllEnvs());

/** The modules as a process sees them that was started in this environment. */
const fresh = async () => ({
  ...(await import('#server/record/anchor-records')),
  ...(await import('#server/record/send-anchors')),
  ...(await import('#server/record/list-anchors')),
  ...(await import('#server/record/list-broken')),
  ...(await import('#server/record/verify-record')),
});

const jobs = async () =>
  (await query("SELECT key FROM graphile_worker.jobs WHERE task_identifier = 'send-anchor' ORDER BY key")).rows.map(
    ({ key }) => key,
  );
const linesOf = (text: string) =>
  text
    .split('\n')
    .filter((line) => line.startsWith('holdfast.anchor/1'))
    .join('\n');

describe('the daily anchor', () => {
  test('of a whole record is kept once a day, and each place gets a job of its own', async () => {
    const { anchorRecords } = await fresh();
    await anchorRecords(at('2026-11-20'));
    await anchorRecords(new Date('2026-11-20T23:10:00Z'));
    const { rows } = await query('SELECT day::text, seq, at FROM record_anchor');
    expect(rows).toEqual([{ day: '2026-11-20', seq: 5, at: at('2026-11-20') }]);
    expect(await jobs()).toEqual(['send-anchor:file', 'send-anchor:mail', 'send-anchor:webhook']);
  });

  test('reaches a file, a mail box and a server that verifies its signature, and what went where is kept', async () => {
    const { sendAnchors, listAnchors } = await fresh();
    for (const place of ['file', 'mail', 'webhook'] as const) await sendAnchors(place, at('2026-11-20'));
    const written = readFileSync(file, 'utf8');
    expect(readAnchors(written).anchors).toMatchObject([{ site, seq: 5, at: '2026-11-20T00:10:00.000Z' }]);
    expect(statSync(file).mode & 0o007).toBe(0);
    expect(mail.taken).toMatchObject([{ to: ['papers@elsewhere.example'] }]);
    expect(linesOf((await simpleParser(mail.taken[0]?.raw ?? '')).text ?? '')).toBe(written.trimEnd());
    const [{ headers, body } = expect.fail('nothing was posted')] = posted;
    expect(body).toBe(written);
    // Standard Webhooks 1.0, section "Signature scheme": HMAC-SHA256 over `id.timestamp.body`, worked out here by hand.
    const told = `${headers['webhook-id']}.${headers['webhook-timestamp']}.${body}`;
    const hmac = createHmac('sha256', Buffer.alloc(32, 7)).update(told).digest('base64');
    expect(headers['webhook-signature']).toBe(`v1,${hmac}`);
    // Its reference library, as the one who is called uses it; another secret does not fit.
    const signed = headers as Record<string, string>;
    expect(() => new Webhook(SECRET).verify(body, signed, { jsonParse: false })).not.toThrow();
    expect(() =>
      new Webhook(Buffer.alloc(32, 8).toString('base64')).verify(body, signed, { jsonParse: false }),
    ).toThrow();
    const listed = await listAnchors(MANAGER, { site: 'harbour' });
    expect(listed).toMatchObject({
      value: {
        places: [{ place: 'file' }, { place: 'mail' }, { place: 'webhook' }],
        anchors: [
          { day: '2026-11-20', sent: [{ target: file }, { target: '…@elsewhere.example' }, { place: 'webhook' }] },
        ],
        check: { links: 5, brokenSeq: null },
      },
    });
    expect(JSON.stringify(listed)).not.toMatch(/quiet|papers/);
  });

  test('is not sent twice to a place that has it', async () => {
    const { sendAnchors, anchorRecords } = await fresh();
    await sendAnchors('webhook', at('2026-11-20'));
    expect(posted).toEqual([]);
    await query('DELETE FROM graphile_worker._private_jobs');
    await anchorRecords(at('2026-11-20'));
    expect(await jobs()).toEqual([]);
  });

  test('that one place does not take still reaches the others, and is tried again there', async () => {
    const { anchorRecords } = await fresh();
    const { sendAnchor } = await import('#server/worker/tasks/send-anchor');
    vi.setSystemTime(at('2026-11-21'));
    await anchorRecords(at('2026-11-21'));
    status = 503;
    const before = mail.taken.length;
    const runner = await run({
      pgPool: pool(),
      taskList: { 'send-anchor': sendAnchor },
      noHandleSignals: true,
      pollInterval: 50,
    });
    runner.events.on('job:failed', () => undefined);
    await vi.waitFor(async () => {
      const { rows } = await query("SELECT place FROM anchor_sent WHERE day = '2026-11-21' ORDER BY place");
      expect(rows).toEqual([{ place: 'file' }, { place: 'mail' }]);
      expect(await jobs()).toEqual(['send-anchor:webhook']);
      expect((await query('SELECT attempts FROM graphile_worker.jobs')).rows[0].attempts).toBe(1);
    }, 10_000);
    await runner.stop();
    vi.useRealTimers();
    expect(mail.taken.length).toBe(before + 1);
  });

  test('does not follow a redirect, and needs something to sign with', async () => {
    const { postAnchors } = await import('#server/record/places/post-anchors');
    const url = process.env.HOLDFAST_ANCHOR_WEBHOOK ?? '';
    status = 302;
    await expect(postAnchors({ url, secret: SECRET }, 'x\n', '2026-11-21')).rejects.toThrow('status 302');
    expect(posted).toHaveLength(1);
    await expect(postAnchors({ url, secret: undefined }, 'x\n', '2026-11-21')).rejects.toThrow(
      'HOLDFAST_ANCHOR_SECRET',
    );
  });

  test.each([
    ['HOLDFAST_ANCHOR_WEBHOOK', 'http://elsewhere.example/'],
    ['HOLDFAST_ANCHOR_WEBHOOK', 'ftp://elsewhere.example/'],
    ['HOLDFAST_ANCHOR_SECRET', 'short'],
    ['HOLDFAST_ANCHOR_MAIL', 'nobody'],
  ])('is refused at the start when %s is %s', async (name, value) => {
    vi.stubEnv(name, value);
    const { env } = await import('#server/env');
    expect(() => env()).toThrow(name);
  });

  test('of a record that was rewritten and sealed anew is not taken: the last one does not hold', async () => {
    const { anchorRecords, listBroken, verifyRecord } = await fresh();
    const forged = Buffer.alloc(32, 9).toString('hex');
    await query(`SET session_replication_role = replica; UPDATE record_anchor SET seal = '\\x${forged}'`);
    await anchorRecords(at('2026-11-22'));
    expect((await query("SELECT 1 FROM record_anchor WHERE day = '2026-11-22'")).rows).toEqual([]);
    expect(await listBroken(MANAGER)).toEqual({
      ok: true,
      value: [
        {
          site: { key: 'harbour', name: 'Harbour Aquarium' },
          seq: 5,
          wrong: 'not as it was anchored',
          checkedAt: at('2026-11-22'),
        },
      ],
    });
    const broken = { isWhole: false, seq: 5, wrong: 'not as it was anchored' };
    expect(await verifyRecord(MANAGER, { site: 'harbour' })).toEqual({ ok: true, value: broken });
  });

  test('of a broken record is not kept; it is shown to those who manage the site and to nobody else', async () => {
    const { anchorRecords, listBroken, listAnchors } = await fresh();
    await query("SET session_replication_role = replica; UPDATE record SET kind = 'unsaid' WHERE seq = 1");
    await anchorRecords(at('2026-11-22'));
    expect(await listBroken(MANAGER)).toMatchObject({ value: [{ seq: 1, wrong: 'not as it was sealed' }] });
    // Said to be no site that is described yet, it is shown all the same.
    await query('UPDATE site SET revision = 0');
    expect(await listBroken(MANAGER)).toMatchObject({ value: [{ seq: 1 }] });
    await query('UPDATE site SET revision = 1');
    expect(await listBroken({ ...MANAGER, at: { harbour: 'lead' } })).toEqual({ ok: true, value: [] });
    expect(await listAnchors(MANAGER, { site: 'harbour' })).toMatchObject({ value: { check: { brokenSeq: 1 } } });
    expect(await listAnchors({ ...MANAGER, at: { harbour: 'viewer' } }, { site: 'harbour' })).toMatchObject({
      reason: { why: 'not-allowed' },
    });
    expect(await listAnchors({ ...MANAGER, at: {} }, { site: 'harbour' })).toMatchObject({
      reason: { why: 'not-found' },
    });
  });
});
