import { once } from 'node:events';
import pg from 'pg';
import { beforeEach, describe, expect, test } from 'vitest';
import { storeReadings, storeReadingsIn } from '#data/readings/store-readings';
import { inTransaction } from '#data/transaction';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { stored } from '../../_support/stored';

const { query } = freshDatabase();
const site = describedSite(query);
const receivedAt = new Date('2026-06-01T12:00:00Z');
let siteId = '';
let sensor = '';

beforeEach(async () => {
  await site.anew();
  ({ siteId } = await stored('harbour'));
  [sensor = ''] = Object.values(await sensorsOf(query));
});

const arrivals = async () => (await query('SELECT * FROM reading_arrival ORDER BY id')).rows;

describe('readings that arrive', () => {
  test('wait in one row a batch until the alarms are held to them, in the order they were sent', async () => {
    const batch = [
      reading(sensor, '2026-06-01T11:00:00Z', 25.5),
      reading(sensor, '2026-06-01T10:00:00.250Z', 99, { quality: 'suspect', reason: 'x', origin: 'hand' }),
    ];
    await storeReadings(siteId, batch, { receivedAt });
    expect(await arrivals()).toMatchObject([
      {
        site_id: siteId,
        received_at: receivedAt,
        sensor_ids: expect.anything(),
        ats: batch.map(({ at }) => at),
        values: [25.5, 99],
        qualities: [0, 1],
        origins: [1, 3],
      },
    ]);
  });

  test('are not waited for when they were there already, or are those of a file', async () => {
    const given = reading(sensor, '2026-06-01T11:00:00Z', 25.5);
    await storeReadings(siteId, [{ ...given, origin: 'file' }], { receivedAt });
    expect(await arrivals()).toEqual([]);
    await storeReadings(siteId, [given], { receivedAt });
    await storeReadings(siteId, [given, { ...given, value: 26 }], { receivedAt });
    expect(await arrivals()).toHaveLength(1);
    await storeReadings(siteId, [{ ...given, value: 26 }], { receivedAt, correct: true });
    expect((await arrivals()).map(({ values }) => values)).toEqual([[25.5], [26]]);
  });

  test('are told to whoever listens once they are kept, and not when they are not', async () => {
    const listener = new pg.Client({ connectionString: process.env.DATABASE_URL });
    await listener.connect();
    try {
      await listener.query('LISTEN holdfast_arrival');
      const heard: (string | undefined)[] = [];
      listener.on('notification', ({ payload }) => heard.push(payload));
      const broken = inTransaction(async (tx) => {
        await storeReadingsIn(tx, siteId, [reading(sensor, '2026-06-01T11:00:00Z', 25)], { receivedAt });
        throw new Error('no');
      });
      await expect(broken).rejects.toThrow('no');
      expect(await arrivals()).toEqual([]);
      const told = once(listener, 'notification');
      await storeReadings(siteId, [reading(sensor, '2026-06-01T11:00:00Z', 25)], { receivedAt });
      await told;
      // What was said is heard in the order it was said: had the broken one been told, it would stand first.
      expect(heard).toEqual([siteId]);
    } finally {
      await listener.end();
    }
  });
});
