import { beforeEach, describe, expect, test, vi } from 'vitest';
import { livingBrokers } from '#data/brokers/brokers';
import type { Who } from '#server/gate/who';
import { unseal } from '#server/machine/seal';
import { addBrokerTopic } from '#server/readings/add-topic';
import { changeReadingBroker } from '#server/readings/change-broker';
import { endReadingSource } from '#server/readings/end-source';
import { endBrokerTopic } from '#server/readings/end-topic';
import { listReadingSources } from '#server/readings/list-sources';
import { makeReadingBroker } from '#server/readings/make-broker';
import { readRecord } from '#server/record/read-record';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { letIn } from '../../_support/people';
import { stored } from '../../_support/stored';

const { query } = freshDatabase();
const { anew, ofRecord } = describedSite(query);
const site = 'harbour';
const SECRET = 'a secret of this test, long enough for it';
const PASSWORD = 'water under the bridge';
let manager: Who;
let lead: Who;

beforeEach(async () => {
  vi.stubEnv('HOLDFAST_SECRET', SECRET);
  await anew();
  const { siteId } = await stored(site);
  await query(`SET session_replication_role = replica; DELETE FROM account`);
  manager = await letIn(query, siteId, site, 'Mo', 'manager');
  lead = await letIn(query, siteId, site, 'Lee', 'lead');
});

const typed = { site, name: 'Broker in the hall', address: 'mqtts://broker.example:8883', username: 'probe' };

async function made(): Promise<string> {
  const answer = await makeReadingBroker(manager, { ...typed, password: PASSWORD });
  if (!answer.ok) throw new Error(answer.reason.why);
  return answer.value.source;
}

async function page() {
  const found = await listReadingSources(manager, { site });
  if (!found.ok) throw new Error(found.reason.why);
  return found.value;
}

describe('a broker', () => {
  test('is made by a manager, and its password is told by nothing that is kept or shown', async () => {
    const source = await made();
    const [shown] = (await page()).sources;
    expect(shown).toMatchObject({ id: source, isBroker: true, broker: { username: 'probe', hasPassword: true } });
    const { rows } = await query(`SELECT b::text AS row FROM reading_broker b UNION ALL SELECT body::text FROM record`);
    for (const said of [JSON.stringify(rows), JSON.stringify(await page())]) expect(said).not.toContain(PASSWORD);
    const [kept] = await livingBrokers();
    expect(unseal(kept?.passwordSealed ?? new Uint8Array(), 'broker password')).toEqual({ ok: true, value: PASSWORD });
    expect(await ofRecord('broker-made')).toEqual([{ by: manager.id, source }]);
    expect(JSON.stringify(await readRecord(manager, { site }))).toContain('Had readings come from Broker in the hall');
  });

  test('keeps its password when it is changed without one, and loses it with its user', async () => {
    const source = await made();
    const address = 'mqtts://other.example';
    expect(await changeReadingBroker(manager, { site, source, address, username: 'probe' })).toMatchObject({
      ok: true,
    });
    expect((await page()).sources[0]?.broker).toMatchObject({ address, hasPassword: true });
    await changeReadingBroker(manager, { site, source, address });
    expect((await page()).sources[0]?.broker).toMatchObject({ username: null, hasPassword: false });
    expect(await ofRecord('broker-changed')).toHaveLength(2);
  });

  test('is nobody’s below a manager, and none once it was ended', async () => {
    const source = await made();
    const refusal = { ok: false, reason: { why: 'not-allowed' } };
    expect(await makeReadingBroker(lead, typed)).toEqual(refusal);
    expect(await changeReadingBroker(lead, { ...typed, source })).toEqual(refusal);
    await endReadingSource(manager, { site, source });
    expect(await livingBrokers()).toEqual([]);
    expect(await changeReadingBroker(manager, { ...typed, source })).toMatchObject({ reason: { why: 'not-found' } });
    expect((await page()).sources[0]).toMatchObject({ isBroker: true, broker: null });
  });

  test('takes no password on a machine that could not keep it', async () => {
    vi.stubEnv('HOLDFAST_SECRET', '');
    expect(await makeReadingBroker(manager, { ...typed, password: PASSWORD })).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'password' }] },
    });
    expect(await makeReadingBroker(manager, typed)).toMatchObject({ ok: true });
  });
});

describe('a topic', () => {
  test('is listened to until it is given up; of a single one it can be said which sensor it is', async () => {
    const source = await made();
    const { sensors } = await page();
    const sensor = sensors[0]?.id ?? '';
    const topic = 'hall/north/probe';
    const added = { site, source, topic, payload: 'number' as const, unit: '°C', sensor, field: 'left.over' };
    expect(await addBrokerTopic(manager, added)).toEqual({ ok: true, value: { topic } });
    const { aliases, sources } = await page();
    expect(aliases).toEqual([{ name: topic, sensor }]);
    const [one] = sources[0]?.broker?.topics ?? [];
    expect(one).toMatchObject({ topic, payload: 'number', unit: '°C', field: null });
    expect(await endBrokerTopic(lead, { site, topic: one?.id ?? '' })).toMatchObject({ ok: false });
    expect(await endBrokerTopic(manager, { site, topic: one?.id ?? '' })).toEqual({ ok: true, value: { topic } });
    expect(await endBrokerTopic(manager, { site, topic: one?.id ?? '' })).toMatchObject({ ok: false });
    expect(await livingBrokers()).toMatchObject([{ topics: [], ended: [topic] }]);
    expect(await ofRecord('topic-added')).toEqual([{ by: manager.id, source, topic }]);
    expect(await ofRecord('topic-ended')).toEqual([{ by: manager.id, source, topic }]);
  });
});
