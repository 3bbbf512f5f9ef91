import { beforeEach, describe, expect, test, vi } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { NO_MOSQUITTO, startMosquitto } from '../../_support/mqtt-brokers';
import { stored } from '../../_support/stored';
import { temporaryFolder } from '../../_support/temporary-folder';
import { aBroker, connected, keepers, readingsOf, sender, soon } from './broker-site';

const { query } = freshDatabase();
const { anew } = describedSite(query);
const { begin } = keepers();
const folder = temporaryFolder();

beforeEach(async () => {
  vi.stubEnv('HOLDFAST_SECRET', 'a secret of this test, long enough for it');
  await anew();
});

// Eclipse Mosquitto, written by others: it speaks MQTT 5, keeps a session, and marks what it sends again.
describe('a broker of MQTT 5', () => {
  test('is spoken to by 5, hands on what came while nobody was there, and what was not acknowledged once', async () => {
    if (NO_MOSQUITTO !== null) {
      console.warn(`NOT TESTED: MQTT 5 against a real broker, because ${NO_MOSQUITTO} (Debian: mosquitto).`);
      return;
    }
    const { siteId } = await stored('harbour');
    const broker = await startMosquitto(folder, 'right');
    await aBroker(siteId, broker.port, [['plant/{system}/{sensor}', 'number']], { password: 'right' });
    const { rows } = await query(
      `SELECT y.key || '/' || s.key AS path FROM sensor s JOIN system y ON y.site_id = s.site_id AND y.id = s.system_id
        WHERE s.site_id = $1 AND s.quantity = 'temperature' ORDER BY 1 LIMIT 1`,
      [siteId],
    );
    const topic = `plant/${rows[0]?.path}`;
    const worker = begin();
    expect((await connected(siteId)).state.version).toBe(5);
    const client = await sender(broker.port, { username: 'probe', password: 'right' });
    await client.publishAsync(topic, '24', { qos: 1 });
    const values = async () => (await readingsOf(query, siteId)).map(([, value]) => value);
    await soon(async () => (await values()).length === 1);
    await worker.stop();
    const sent = Array.from({ length: 30 }, (_, i) => 24 + i / 10);
    for (const value of sent.slice(1)) await client.publishAsync(topic, String(value), { qos: 1 });
    begin();
    await soon(async () => (await values()).length === sent.length);
    expect(await values()).toEqual(sent);
    // Nobody can say when those were taken that waited: they may call, and end nothing.
    const { rows: kept } = await query('SELECT quality, reason FROM reading ORDER BY at');
    expect(kept[0]).toEqual({ quality: 0, reason: null });
    expect(new Set(kept.slice(1).map(({ quality, reason }) => `${quality} ${reason}`))).toEqual(new Set(['1 waited']));
    await client.endAsync();
    await broker.close();
  });
});
