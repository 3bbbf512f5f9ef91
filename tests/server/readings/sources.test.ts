import { beforeEach, describe, expect, test } from 'vitest';
import type { Who } from '#server/gate/who';
import { endReadingSource } from '#server/readings/end-source';
import { listReadingSources, type SourcesPage } from '#server/readings/list-sources';
import { makeReadingSource } from '#server/readings/make-source';
import { nameSensor, unnameSensor } from '#server/readings/name-sensor';
import { readRecord } from '#server/record/read-record';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { post } from '../../_support/sources';
import { stored } from '../../_support/stored';

const { query } = freshDatabase();
const { anew, ofRecord } = describedSite(query);
const site = 'harbour';
let manager: Who;
let lead: Who;

beforeEach(async () => {
  await anew();
  const { siteId } = await stored(site);
  await query(`SET session_replication_role = replica; DELETE FROM account`);
  manager = await letIn(query, siteId, site, 'Mo', 'manager');
  lead = await letIn(query, siteId, site, 'Lee', 'lead');
});

async function page(): Promise<SourcesPage> {
  const found = await listReadingSources(manager, { site });
  if (!found.ok) throw new Error(found.reason.why);
  return found.value;
}

async function made(name = 'Gateway by the pumps', gateway?: string): Promise<string> {
  const answer = await makeReadingSource(manager, { site, name, ...(gateway ? { gateway } : {}) });
  if (!answer.ok) throw new Error(answer.reason.why);
  return answer.value.token;
}

describe('a source of readings', () => {
  test('is made by a manager, sends by its token, and is listed with when it last did', async () => {
    const token = await made('Gateway by the pumps', 'gateway-1');
    const [before] = (await page()).sources;
    expect(before).toMatchObject({
      name: 'Gateway by the pumps',
      gateway: 'Gateway 1',
      by: 'Mo',
      endedAt: null,
      usedAt: null,
    });
    const path = (await page()).sensors[0]?.path ?? '';
    expect(await (await post(token, [{ n: path, v: 25 }])).json()).toMatchObject({ refused: 0 });
    expect((await page()).sources[0]?.usedAt).not.toBeNull();
  });

  test('is ended once, sends nothing from then on, and stays in the list', async () => {
    const token = await made();
    const [{ id: source } = { id: '' }] = (await page()).sources;
    expect(await endReadingSource(manager, { site, source })).toMatchObject({ ok: true });
    expect(await endReadingSource(manager, { site, source })).toMatchObject({
      ok: false,
      reason: { why: 'not-found' },
    });
    expect((await post(token, [])).status).toBe(401);
    expect((await page()).sources[0]?.endedAt).not.toBeNull();
  });

  test('is nobody’s to make below a manager, nor for a gateway that is none', async () => {
    const refusal = { ok: false, reason: { why: 'not-allowed' } };
    expect(await makeReadingSource(lead, { site, name: 'x' })).toEqual(refusal);
    expect(await listReadingSources(lead, { site })).toEqual(refusal);
    expect(await makeReadingSource(manager, { site, name: 'x', gateway: 'router' })).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'gateway' }] },
    });
    expect((await page()).sources).toEqual([]);
  });

  test('stands in the record by its id, told by its name, and its token nowhere', async () => {
    const token = await made('Gateway by the pumps', 'gateway-1');
    const [{ id: source } = { id: '' }] = (await page()).sources;
    await endReadingSource(manager, { site, source });
    expect(await ofRecord('source-made')).toEqual([{ by: manager.id, source, gateway: expect.any(String) }]);
    expect(await ofRecord('source-ended')).toEqual([{ by: manager.id, source }]);
    const record = JSON.stringify(await readRecord(manager, { site }));
    expect(record).toContain('Let Gateway by the pumps send readings for Gateway 1');
    expect(record).toContain('Ended Gateway by the pumps as a source of readings');
    const { rows } = await query(`SELECT body::text FROM record`);
    expect(JSON.stringify(rows)).not.toContain(token);
  });
});

describe('a name that no sensor has', () => {
  test('is shown with what came under it, and is a sensor’s once somebody said so', async () => {
    const token = await made();
    const send = async () => await (await post(token, [{ n: 'probe-7', v: 77, u: 'degF', t: -1 }])).json();
    expect(await send()).toMatchObject({ refused: 1 });
    const { unknown, sensors } = await page();
    expect(unknown).toMatchObject([{ name: 'probe-7', value: 77, unit: 'degF' }]);
    const sensor = sensors.find(({ quantity }) => quantity === 'temperature')?.id ?? '';
    expect(await nameSensor(manager, { site, name: 'probe-7', sensor })).toMatchObject({ ok: true });
    expect(await send()).toMatchObject({ stored: 1 });
    expect(await page()).toMatchObject({ unknown: [], aliases: [{ name: 'probe-7', sensor }] });
    expect(await unnameSensor(manager, { site, name: 'probe-7' })).toMatchObject({ ok: true });
    expect(await unnameSensor(manager, { site, name: 'probe-7' })).toMatchObject({ ok: false });
    expect(await send()).toMatchObject({ refused: 1 });
    expect(await ofRecord('sensor-named')).toEqual([{ by: manager.id, sensor, name: 'probe-7' }]);
    expect(await ofRecord('sensor-unnamed')).toEqual([{ by: manager.id, sensor, name: 'probe-7' }]);
  });

  test('cannot be that of a sensor elsewhere, nor one that is understood as it is', async () => {
    const { sensors } = await page();
    const invalid = { ok: false, reason: { why: 'invalid' } };
    const sensor = sensors[0]?.id ?? '';
    expect(await nameSensor(manager, { site, name: 'a', sensor: manager.id })).toMatchObject(invalid);
    expect(await nameSensor(manager, { site, name: sensors[1]?.path ?? '', sensor })).toMatchObject(invalid);
    expect(await nameSensor(lead, { site, name: 'a', sensor })).toMatchObject({ reason: { why: 'not-allowed' } });
  });
});
