import { beforeEach, describe, expect, test } from 'vitest';
import { ensureParts } from '#data/readings/parts';
import { type Latest, latestOf } from '#data/readings/series';
import { type NewReading, storeReadings } from '#data/readings/store-readings';
import { describedSite } from '../../_support/described-site';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { stored } from '../../_support/stored';

const { query } = freshDatabase();
const site = describedSite(query);
const RECEIVED = new Date('2026-06-01T12:00:00Z');
const DAY = '2026-06-01T';
let siteId = '';
let sensor = '';

beforeEach(async () => {
  await site.anew();
  ({ siteId } = await stored('harbour'));
  [sensor = ''] = Object.values(await sensorsOf(query));
});

const send = (readings: NewReading[], correct = false) =>
  storeReadings(siteId, readings, { receivedAt: RECEIVED, correct });
const latest = async (): Promise<Latest | undefined> => (await latestOf(siteId)).get(sensor);
const suspect = { quality: 'suspect', reason: 'out-of-range' } as const;

describe('the latest reading of a sensor', () => {
  test('is the newest, however late an older one arrives', async () => {
    await send([reading(sensor, `${DAY}10:00:00Z`, 25)]);
    await send([reading(sensor, `${DAY}09:00:00Z`, 20), reading(sensor, `${DAY}08:00:00Z`, 19)]);
    expect(await latest()).toMatchObject({ value: 25, quality: 'good', goodValue: 25, origin: 'device' });
    await send([reading(sensor, `${DAY}11:00:00Z`, 26), reading(sensor, `${DAY}10:30:00Z`, 25.5)]);
    expect(await latest()).toMatchObject({ value: 26, atMs: Date.parse(`${DAY}11:00:00Z`), goodValue: 26 });
  });

  test('may be one that is not good, beside which the newest good one stands', async () => {
    await send([reading(sensor, `${DAY}10:00:00Z`, 25)]);
    await send([reading(sensor, `${DAY}11:00:00Z`, 99, suspect)]);
    const goodAtMs = Date.parse(`${DAY}10:00:00Z`);
    expect(await latest()).toMatchObject({ value: 99, ...suspect, goodValue: 25, goodAtMs });
    await send([reading(sensor, `${DAY}10:30:00Z`, 25.5)]);
    expect(await latest()).toMatchObject({ value: 99, ...suspect, goodValue: 25.5 });
  });

  test('has no good one beside it when there never was one', async () => {
    await send([reading(sensor, `${DAY}10:00:00Z`, 99, suspect)]);
    expect(await latest()).toEqual({
      sensor,
      atMs: Date.parse(`${DAY}10:00:00Z`),
      value: 99,
      ...suspect,
      origin: 'device',
      receivedAtMs: RECEIVED.getTime(),
    });
  });

  test('of one instant is the one by hand, whichever came first', async () => {
    await send([reading(sensor, `${DAY}10:00:00Z`, 25.4, { origin: 'hand' })]);
    await send([reading(sensor, `${DAY}10:00:00Z`, 25)]);
    expect(await latest()).toMatchObject({ value: 25.4, origin: 'hand' });
  });

  test('follows a correction, also one that takes the good value back', async () => {
    await send([reading(sensor, `${DAY}09:00:00Z`, 24), reading(sensor, `${DAY}10:00:00Z`, 25)]);
    await send([reading(sensor, `${DAY}10:00:00Z`, 250, { quality: 'bad', reason: 'impossible' })], true);
    expect(await latest()).toMatchObject({ value: 250, quality: 'bad', goodValue: 24 });
    await send([reading(sensor, `${DAY}09:00:00Z`, 24.5)], true);
    expect(await latest()).toMatchObject({ value: 250, goodValue: 24.5, goodAtMs: Date.parse(`${DAY}09:00:00Z`) });
  });

  test('is right after many at once', async () => {
    const minutes = Array.from({ length: 60 }, (_, i) => i).sort((a, b) => ((a * 37) % 60) - ((b * 37) % 60));
    await ensureParts([RECEIVED]);
    await Promise.all(
      minutes.map((m) => send([reading(sensor, new Date(Date.UTC(2026, 5, 1, 9, m)).toISOString(), m)])),
    );
    expect(await latest()).toMatchObject({ value: 59, goodValue: 59 });
  });
});
