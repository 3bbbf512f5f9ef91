import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { endTopic } from '#data/brokers/brokers';
import { listBrokers } from '#data/brokers/list-brokers';
import { unknownNames } from '#data/readings/sensor-names';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { type Kept, lossyLine, startAedes } from '../../_support/mqtt-brokers';
import { stored } from '../../_support/stored';
import { CERTIFICATE } from '../../_support/test-certificate';
import { aBroker, connected, keepers, readingsOf, sender, soon } from './broker-site';
import { ROOT } from '../../../app/_start/places.mjs';

const { query } = freshDatabase();
const { anew } = describedSite(query);
const { begin } = keepers();
let siteId = '';
let names: { system: string; sensor: string }[] = [];

beforeEach(async () => {
  vi.stubEnv('HOLDFAST_SECRET', 'a secret of this test, long enough for it');
  await anew();
  ({ siteId } = await stored('harbour'));
  const { rows } = await query(
    `SELECT y.key AS system, s.key AS sensor FROM sensor s JOIN system y ON y.site_id = s.site_id AND y.id = s.system_id
      WHERE s.site_id = $1 AND s.quantity = 'temperature' ORDER BY y.key, s.key`,
    [siteId],
  );
  names = rows;
});

const first = () => names[0] ?? { system: '', sensor: '' };
const topicOf = (n = first()) => `plant/${n.system}/${n.sensor}/value`;
const TEMPLATE = 'plant/{system}/{sensor}/value';
const values = async () => (await readingsOf(query, siteId)).map(([, value]) => value);

describe('what comes', () => {
  test('is a number, a field of an object or a pack, by the topic that it came under', async () => {
    const { port, close } = await startAedes();
    const { system, sensor } = first();
    await aBroker(siteId, port, [
      [TEMPLATE, 'number', { unit: 'degF' }],
      ['json/{system}/{sensor}', 'field', { field: 'body.t', timeField: 'at' }],
      ['pack', 'senml'],
      ['hall/#', 'number'],
    ]);
    begin();
    await connected(siteId);
    const client = await sender(port);
    await client.publishAsync(topicOf(), ' 77 ', { qos: 1 });
    const at = '2026-03-04T10:00:00+01:00';
    await client.publishAsync(`json/${system}/${sensor}`, JSON.stringify({ at, body: { t: '24.5' } }), { qos: 1 });
    await client.publishAsync('pack', JSON.stringify([{ bn: `${system}/`, n: sensor, bt: 1772618401, v: 24 }]));
    await client.publishAsync('hall/north/probe', '21.5', { qos: 1 });
    await client.publishAsync('hall/north/probe', 'broken', { qos: 1 });
    await client.publishAsync('elsewhere', '1', { qos: 1 });
    const [broker] = await soon(async () => {
      const found = await listBrokers(siteId);
      return (found[0]?.state.messages ?? 0) >= 5 ? found : null;
    });
    expect(await values()).toEqual([24.5, 24, 25]);
    expect(await unknownNames(siteId)).toMatchObject([{ name: 'hall/north/probe', value: 21.5 }]);
    // aedes refuses MQTT 5, so that what took the connection is 3.1.1.
    expect(broker?.state).toMatchObject({ version: 4, messages: 5, stored: 3, refused: 2, failedWhy: null });
    const { rows } = await query(`SELECT DISTINCT came_by FROM reading`);
    expect(rows).toEqual([{ came_by: broker?.sourceId }]);
    await client.endAsync();
    await close();
  });

  test('and was kept by the broker is not taken as new; with a time of its own it is of that time', async () => {
    const { port, close } = await startAedes();
    const client = await sender(port);
    const { system, sensor } = first();
    await client.publishAsync(topicOf(), '25', { qos: 1, retain: true });
    await client.publishAsync('pack', JSON.stringify([{ n: `${system}/${sensor}`, t: 1772618401, v: 24 }]), {
      qos: 1,
      retain: true,
    });
    await aBroker(siteId, port, [
      [TEMPLATE, 'number'],
      ['pack', 'senml'],
    ]);
    begin();
    const [broker] = await soon(async () => {
      const found = await listBrokers(siteId);
      return (found[0]?.state.messages ?? 0) >= 2 ? found : null;
    });
    expect(broker?.state).toMatchObject({ retained: 1, stored: 1 });
    expect(await values()).toEqual([24]);
    // It says nothing of now: no alarm is held to it.
    expect((await query('SELECT count(*)::int AS n FROM reading_arrival')).rows).toEqual([{ n: 0 }]);
    await client.endAsync();
    await close();
  });

  test('is no longer heard once its topic is given up', async () => {
    const { port, close, broker } = await startAedes();
    await aBroker(siteId, port, [
      [TEMPLATE, 'number'],
      ['hall/#', 'number'],
    ]);
    begin();
    const { topics } = await connected(siteId);
    const given = topics.find(({ topic }) => topic === 'hall/#')?.id ?? '';
    const unsubscribed = once(broker, 'unsubscribe');
    await inTransaction((tx) => endTopic(tx, siteId, given, now()));
    const [filters] = await unsubscribed;
    expect(filters).toEqual(['hall/#']);
    await close();
  });
});

describe('a connection', () => {
  test('that the broker refuses says why in words, and is tried again until it does not', async () => {
    const { port, close } = await startAedes({ password: 'right' });
    const source = await aBroker(siteId, port, [[TEMPLATE, 'number']], { password: 'wrong' });
    begin();
    const failed = await soon(async () => {
      const [one] = await listBrokers(siteId);
      return one?.state.failedWhy ? one.state : null;
    });
    expect(failed).toMatchObject({ connectedAt: null, failedWhy: 'The broker does not take this user and password.' });
    const right = await aBroker(siteId, port, [], { password: 'right' });
    await query(
      `UPDATE reading_broker b SET password_sealed = o.password_sealed FROM reading_broker o
        WHERE b.source_id = $1 AND o.source_id = $2`,
      [source, right],
    );
    await query('UPDATE reading_source SET ended_at = now() WHERE id = $1', [right]);
    expect((await connected(siteId)).state.failedWhy).toBeNull();
    await close();
  });

  test.each([
    ['mqtt://127.0.0.1:1', 'Nobody answers at that address and port.'],
    ['mqtt://169.254.169.254:1883', 'There can be no broker at that address.'],
    ['mqtt://nobody.invalid:1883', 'There is no machine of that name.'],
  ])('to %s says why', async (address, why) => {
    const source = await aBroker(siteId, 1, []);
    await query('UPDATE reading_broker SET address = $2 WHERE source_id = $1', [source, address]);
    begin();
    const said = await soon(async () => (await listBrokers(siteId))[0]?.state.failedWhy);
    expect([why, 'The name of the machine cannot be looked up at the moment.']).toContain(said);
  });

  test('that is encrypted is to whom its certificate says, or to nobody', async () => {
    const { port, close } = await startAedes({ isTls: true });
    const source = await aBroker(siteId, port, [[TEMPLATE, 'number']]);
    const as = async (address: string, authority: string | null) =>
      await query('UPDATE reading_broker SET address = $2, authority = $3 WHERE source_id = $1', [
        source,
        address,
        authority,
      ]);
    await as(`mqtts://localhost:${port}`, null);
    begin();
    const why = async (start: string) =>
      await soon(async () => (await listBrokers(siteId))[0]?.state.failedWhy?.startsWith(start));
    await why('The broker’s certificate is signed by itself');
    await as(`mqtts://127.0.0.1:${port}`, CERTIFICATE);
    await why('The broker’s certificate is of another name');
    await as(`mqtts://localhost:${port}`, CERTIFICATE);
    await connected(siteId);
    await close();
  });

  test('comes back by itself, and what was sent meanwhile has waited', async () => {
    const before = await startAedes();
    await aBroker(siteId, before.port, [[TEMPLATE, 'number']]);
    begin();
    await connected(siteId);
    const persistence = (before.broker as unknown as { persistence: Kept }).persistence;
    await before.close();
    await soon(async () => (await listBrokers(siteId))[0]?.state.failedWhy);
    const after = await startAedes({ port: before.port, persistence });
    const client = await sender(after.port);
    for (const value of ['25', '25.1']) await client.publishAsync(topicOf(), value, { qos: 1 });
    await soon(async () => (await values()).length === 2);
    expect(await values()).toEqual([25, 25.1]);
    await client.endAsync();
    await after.close();
  });

  test('is one worker’s at a time, and another’s soon after it let go', async () => {
    const { port, close, broker } = await startAedes();
    const clients: string[] = [];
    broker.on('client', ({ id }) => clients.push(id));
    await aBroker(siteId, port, [[TEMPLATE, 'number']]);
    const one = begin();
    await connected(siteId);
    begin();
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(clients).toHaveLength(1);
    await one.stop();
    await soon(async () => clients.length === 2);
    // The same name, so that what came meanwhile is handed on.
    expect(new Set(clients).size).toBe(1);
    await close();
  });
});

describe('a worker that is killed between storing and acknowledging', () => {
  test('leaves the message to the next one, which does not store it again', async () => {
    const { port, close } = await startAedes();
    const line = await lossyLine(port);
    const source = await aBroker(siteId, line.port, [[TEMPLATE, 'number']]);
    const child = spawn(
      process.execPath,
      ['--conditions=react-server', '--import', 'tsx', 'tests/server/mqtt/hold-brokers.ts'],
      { cwd: ROOT, stdio: 'inherit' },
    );
    await connected(siteId);
    line.lose();
    const client = await sender(port);
    await client.publishAsync(topicOf(), '25', { qos: 1 });
    await soon(async () => (await values()).length === 1);
    child.kill('SIGKILL');
    await once(child, 'exit');
    await query('UPDATE reading_broker SET address = $2 WHERE source_id = $1', [source, `mqtt://127.0.0.1:${port}`]);
    begin();
    await client.publishAsync(topicOf(), '26', { qos: 1 });
    const state = await soon(async () => {
      const [one] = await listBrokers(siteId);
      return (one?.state.messages ?? 0) >= 3 ? one?.state : null;
    });
    // Three messages came, of which the first came twice.
    expect(state).toMatchObject({ messages: 3, stored: 2, refused: 0 });
    expect(await values()).toEqual([25, 26]);
    await client.endAsync();
    await close();
    await line.close();
  });
});
