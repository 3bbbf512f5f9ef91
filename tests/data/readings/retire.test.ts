import { beforeAll, describe, expect, test } from 'vitest';
import { monthsFrom } from '#data/readings/parts';
import { pool } from '#data/pool';
import { keptFrom, retireMonth } from '#data/readings/retire';
import { rolledUp } from '#data/readings/roll-up';
import { readSeries } from '#data/readings/series';
import { storeReadings } from '#data/readings/store-readings';
import { now } from '#server/clock';
import { retireReadings } from '#server/readings/retire-readings';
import { rollUpDue } from '#server/readings/roll-up-due';
import { settleSite } from '#server/readings/settle-site';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { aSource, post } from '../../_support/sources';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const HOUR = 3_600_000;
/** First days of the months, the eighth, seventh and sixth before this one. */
const [old = new Date(0), next = new Date(0), last = new Date(0)] = monthsFrom(
  new Date(Date.UTC(now().getUTCFullYear(), now().getUTCMonth() - 8, 1)),
  3,
);
const day = (at: Date) => at.toISOString().slice(0, 10);
let siteId = '';
let sensor = '';

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  sensor = (await sensorsOf(query))['display-temperature'] ?? '';
  const count = (last.getTime() - old.getTime()) / (6 * HOUR);
  const readings = Array.from({ length: count }, (_, i) =>
    reading(sensor, new Date(old.getTime() + i * 6 * HOUR).toISOString(), 24 + (i % 3)),
  );
  await storeReadings(siteId, readings, { receivedAt: now() });
});

const settle = async () => {
  while ((await settleSite(siteId, now())) === 'more');
  while ((await rollUpDue(now())).isMore);
};
const retain = (months: number | null) =>
  query(`UPDATE site SET detail = detail || $1::jsonb`, [JSON.stringify({ keepReadingsMonths: months })]);
const inMonth = (from: Date, to: Date) => readSeries(siteId, sensor, from, to);

describe('readings of a month', () => {
  test('stay for as long as nobody says otherwise', async () => {
    await settle();
    expect(await retireMonth(day(old))).toBe('wanted');
  });

  test('stay while an hour of them is not rolled up', async () => {
    await retain(6);
    const again = reading(sensor, new Date(old.getTime() + HOUR).toISOString(), 25);
    await storeReadings(siteId, [again], { receivedAt: now() });
    expect(await retireMonth(day(old))).toBe('not-rolled-up');
    await settleSite(siteId, now());
    expect(await retireMonth(day(old))).toBe('not-rolled-up');
    await settle();
  });

  test('stay while those of an older month do, and while they are of the last months', async () => {
    expect(await retireMonth(day(next))).toBe('older-kept');
    expect(await retireMonth(day(now()))).toBe('too-new');
  });

  test('stay while another site on the machine wants them', async () => {
    await keep({ ...facility(), site: { ...facility().site, key: 'other' } });
    const other = await stored('other');
    const { rows } = await query('SELECT id FROM sensor WHERE site_id = $1 LIMIT 1', [other.siteId]);
    await storeReadings(other.siteId, [reading(rows[0].id, next.toISOString(), 7)], { receivedAt: now() });
    while ((await settleSite(other.siteId, now())) === 'more');
    await settle();
    expect(await retireReadings()).toEqual([day(old)]);
    expect(await retireMonth(day(next))).toBe('wanted');
  });

  test('go with all but their last hours, and what they were rolled up to stays as it was', async () => {
    const kept = await inMonth(old, next);
    expect(kept.map(({ atMs }) => (next.getTime() - atMs) / HOUR)).toEqual([24, 18, 12, 6]);
    const span = { from: old, to: next };
    const days = await rolledUp(siteId, sensor, { ...span, isDay: true });
    expect(days.length).toBeGreaterThanOrEqual(28);
    expect((await rolledUp(siteId, sensor, { ...span, isDay: false })).length).toBeGreaterThan(4 * 27);
    await query(
      `INSERT INTO reading_touched VALUES ($1, gen_random_uuid(), ARRAY[$2::uuid], ARRAY[$3::timestamptz], ARRAY[$3::timestamptz])`,
      [siteId, sensor, new Date(old.getTime() + 6 * HOUR)],
    );
    await settle();
    expect(await rolledUp(siteId, sensor, { ...span, isDay: true })).toEqual(days);
  });

  test('are taken in no more once they are gone, and each is told so', async () => {
    const { token } = await aSource(siteId);
    const at = (instant: Date) => instant.getTime() / 1000;
    const [name] = [`${facility().systems[0]?.key}/display-temperature`];
    const answer = await post(token, [
      { n: name, t: at(new Date(next.getTime() - HOUR)), v: 25 },
      { n: name, t: at(new Date(next.getTime() + HOUR)), v: 25 },
    ]);
    expect((await answer.json()).records).toMatchObject([
      { result: 'refused', field: 't', why: 'is of a month whose readings were retired' },
      { result: 'stored' },
    ]);
    expect(await keptFrom()).toEqual(next);
  });

  test('stay where an incident cites them', async () => {
    await query(`UPDATE site SET detail = detail || '{"keepReadingsMonths": 6}' WHERE key = 'other'`);
    await query(
      `SET session_replication_role = replica; INSERT INTO incident VALUES ('${siteId}', '${siteId}', 1, 'Flood', NULL, NULL, '${new Date(next.getTime() + 10 * 24 * HOUR).toISOString()}', 'local')`,
    );
    await settle();
    expect(await retireReadings()).toContain(day(next));
    const kept = (await inMonth(next, last)).map(({ atMs }) => (atMs - next.getTime()) / HOUR / 24);
    // Three days before it was opened and three after, and the last hours of the month.
    expect(kept.filter((days) => days < 20)).toHaveLength(25);
    expect(Math.min(...kept)).toBe(7);
    expect(kept.filter((days) => days >= 20)).toHaveLength(4);
  });

  test('may be let go by the processes in this way alone', async () => {
    await expect(pool().query('DROP TABLE reading_parts.reading_2020_01')).rejects.toMatchObject({ code: '42501' });
    await expect(
      pool().query('ALTER TABLE reading DETACH PARTITION reading_parts.reading_2020_01'),
    ).rejects.toMatchObject({ code: '42501' });
  });
});
