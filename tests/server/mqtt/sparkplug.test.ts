import type { MqttClient } from 'mqtt';
import { get } from 'sparkplug-payload';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { listBrokers } from '#data/brokers/list-brokers';
import { sensorsAt, setAlias } from '#data/readings/sensor-names';
import { inTransaction } from '#data/transaction';
import { judgeSite } from '#server/alarms/judge-site';
import { now } from '#server/clock';
import { alarm, sensor, system } from '../../_support/build-system';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { startAedes } from '../../_support/mqtt-brokers';
import { keep, stored } from '../../_support/stored';
import { aBroker, connected, keepers, readingsOf, sender, soon } from './broker-site';

// What a node sends is encoded by `sparkplug-payload` of Eclipse Tahu.
const codec = get('spBv1.0');
const { query } = freshDatabase();
const { anew } = describedSite(query);
const { begin } = keepers();
let siteId = '';

/** An edge node as a test plays it. */
interface Node {
  client: MqttClient;
  say: (kind: string, seq: number | undefined, metrics: unknown[], device?: string) => Promise<void>;
}

const bytes = (seq: number | undefined, metrics: unknown[]) =>
  Buffer.from(
    codec?.encodePayload({ timestamp: Date.now(), ...(seq === undefined ? {} : { seq }), metrics } as never) ?? [],
  );
const bdSeq = { name: 'bdSeq', type: 'UInt64', value: 3 };
const warm = (value: number, more: object = {}) => ({
  alias: 1,
  type: 'Double',
  value,
  timestamp: Date.now(),
  ...more,
});
const BORN = [bdSeq, { ...warm(25), name: 'temperature' }];

async function aNode(port: number): Promise<Node> {
  const will = { topic: 'spBv1.0/hall/NDEATH/gw', payload: bytes(undefined, [bdSeq]), qos: 1 as const };
  const client = await sender(port, { will });
  return {
    client,
    say: async (kind, seq, metrics, device) => {
      const topic = `spBv1.0/hall/${kind}/gw${device === undefined ? '' : `/${device}`}`;
      await client.publishAsync(topic, bytes(seq, metrics));
    },
  };
}

beforeEach(async () => {
  vi.stubEnv('HOLDFAST_SECRET', 'a secret of this test, long enough for it');
  await anew();
  const probe = sensor({ key: 'probe', gateway: 'gateway-1' });
  const silent = alarm({ key: 'silent', on: { kind: 'silent', gateway: 'gateway-1' }, delayS: 600, deadBand: 0 });
  await keep(facility({ systems: [system({ sensors: [probe], alarms: [silent] })] }));
  ({ siteId } = await stored('harbour'));
  const [one] = await sensorsAt(siteId);
  await inTransaction((tx) => setAlias(tx, siteId, 'hall/gw/temperature', one?.id ?? ''));
});

const values = async () => (await readingsOf(query, siteId)).map(([, value]) => value);
const nodes = async () => (await listBrokers(siteId))[0]?.nodes ?? [];
const phase = (wanted: string) => soon(async () => (await nodes()).some((node) => node.phase === wanted));
const open = async () =>
  (
    await query(`SELECT kind FROM alarm_event WHERE site_id = $1 AND kind IN ('raised', 'returned') ORDER BY id`, [
      siteId,
    ])
  ).rows.map(({ kind }) => kind);

describe('an edge node', () => {
  test('is heard from its birth on; what came before is held back and counted', async () => {
    const { port, close } = await startAedes();
    await aBroker(siteId, port, [['spBv1.0/#', 'sparkplug']]);
    begin();
    await connected(siteId);
    const node = await aNode(port);
    await node.say('NDATA', 7, [warm(99)]);
    await node.say('NBIRTH', 0, BORN);
    await node.say('NDATA', 1, [warm(25.5), warm(25.6, { isHistorical: true, timestamp: 1_772_618_400_000 })]);
    await soon(async () => (await values()).length === 3);
    expect(await values()).toEqual([25.6, 25, 25.5]);
    expect(await nodes()).toMatchObject([{ name: 'hall/gw', phase: 'born', heldBack: 1, gaps: 0 }]);
    // What is of the past is kept, and no alarm is held to it.
    const { rows } = await query('SELECT unnest("values") AS value FROM reading_arrival ORDER BY 1');
    expect(rows.map(({ value }) => value)).toEqual([25, 25.5]);
    await node.client.endAsync();
    await close();
  });

  test('that dies makes its gateway silent at once, and its next birth ends that', async () => {
    const { port, close } = await startAedes();
    await aBroker(siteId, port, [['spBv1.0/#', 'sparkplug']]);
    begin();
    await connected(siteId);
    const node = await aNode(port);
    await node.say('NBIRTH', 0, BORN);
    await soon(async () => (await values()).length === 1);
    await judgeSite(siteId, now());
    expect(await open()).toEqual([]);
    // Without a farewell: the broker hands on its will.
    node.client.stream.destroy();
    await phase('stale');
    await judgeSite(siteId, now());
    expect(await open()).toEqual(['raised']);
    const again = await aNode(port);
    await again.say('NBIRTH', 0, [bdSeq, { ...warm(25.2), name: 'temperature' }]);
    await soon(async () => (await values()).length === 2);
    await judgeSite(siteId, now());
    expect(await open()).toEqual(['raised', 'returned']);
    await again.client.endAsync();
    await close();
  });

  test.each([
    [true, 1],
    [false, 0],
  ])('whose sequence has a gap is silent until it is born again; that it may be asked: %s', async (asksRebirth, n) => {
    const { port, close } = await startAedes();
    await aBroker(siteId, port, [['spBv1.0/#', 'sparkplug']], { asksRebirth });
    const node = await aNode(port);
    const asked: string[] = [];
    node.client.on('message', (_, payload) => {
      asked.push(...(codec?.decodePayload(payload).metrics ?? []).map(({ name, value }) => `${name} ${value}`));
    });
    await node.client.subscribeAsync('spBv1.0/hall/NCMD/gw', { qos: 1 });
    begin();
    await connected(siteId);
    await node.say('NBIRTH', 0, BORN);
    await node.say('NDATA', 2, [warm(26)]);
    await phase('stale');
    await node.say('NDATA', 3, [warm(27)]);
    await judgeSite(siteId, now());
    expect(await open()).toEqual(['raised']);
    await node.say('NBIRTH', 0, [bdSeq, { ...warm(25.5), name: 'temperature' }]);
    await phase('born');
    expect(await values()).toEqual([25, 25.5]);
    expect(await nodes()).toMatchObject([{ gaps: 1, heldBack: 2 }]);
    expect(asked).toEqual(Array.from({ length: n }, () => 'Node Control/Rebirth true'));
    await node.client.endAsync();
    await close();
  });
});
