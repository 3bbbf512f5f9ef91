import { beforeAll, expect, test } from 'vitest';
import { takeArrivals } from '#data/alarms/arrivals';
import { endTurn } from '#data/alarms/turn';
import { storeReadings } from '#data/readings/store-readings';
import { inTransaction } from '#data/transaction';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { stored } from '../../_support/stored';

const { query } = freshDatabase();
const site = describedSite(query);
let siteId = '';
let sensor = '';

beforeAll(async () => {
  await site.anew();
  ({ siteId } = await stored('harbour'));
  [sensor = ''] = Object.values(await sensorsOf(query));
});

/** Stores so many readings in one batch, one each second from an hour on. */
async function send(hour: number, count: number): Promise<void> {
  const from = Date.UTC(2026, 5, 1, hour);
  const batch = Array.from({ length: count }, (_, i) =>
    reading(sensor, new Date(from + i * 1000).toISOString(), hour + i / 1000),
  );
  await storeReadings(siteId, batch, { receivedAt: new Date(from + 3_600_000) });
}

/** Takes what waits, and removes it. @returns values */
async function take(most: number): Promise<number[]> {
  return await inTransaction(async (tx) => {
    const { ids, seen } = await takeArrivals(tx, siteId, most);
    await endTurn(tx, siteId, { revision: 1, at: new Date(), arrivals: ids });
    return seen.map(({ value }) => value);
  });
}

test('what waits is taken in parts where it is much, whole batches in the order they came, until nothing is left', async () => {
  for (const [hour, count] of [
    [1, 2],
    [2, 2],
    [3, 9],
    [4, 1],
  ] as const)
    await send(hour, count);
  // The third begins before five are reached.
  expect(await take(5)).toEqual([1, 1.001, 2, 2.001, ...Array.from({ length: 9 }, (_, i) => 3 + i / 1000)]);
  expect(await take(5)).toEqual([4]);
  expect(await take(5)).toEqual([]);
});

test('a batch larger than is taken at once is taken alone', async () => {
  await send(6, 9);
  await send(7, 1);
  expect(await take(5)).toHaveLength(9);
  expect(await take(5)).toEqual([7]);
});
