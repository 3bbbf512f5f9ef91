import { readFileSync } from 'node:fs';
import { beforeAll, expect, test } from 'vitest';
import { inPlainTransaction } from '#data/readings/asking';
import { addDue } from '#data/readings/due';
import { rolledUp } from '#data/readings/roll-up';
import { storeReadings } from '#data/readings/store-readings';
import { drawnBuckets } from '#server/readings/drawn-buckets';
import { rollUpDue } from '#server/readings/roll-up-due';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const HOUR = 3_600_000;
const FIRST = Date.UTC(2026, 5, 1, 8);
const DERIVED = '01980000-0000-7000-8000-000000000001';
const span = { from: new Date(FIRST), to: new Date(FIRST + 24 * HOUR) };
let siteId = '';
let sensor = '';

const lay = async (name: string) => await query(readFileSync(`prisma/migrations/${name}/migration.sql`, 'utf8'));
const hour = async (id: string, n: number, { count = 6, byHand = false } = {}) =>
  await query(
    `INSERT INTO reading_roll_up (site_id, sensor_id, is_day, from_at, by_hand, to_at, good_count, good_sum, good_min, good_max,
       good_s, good_outside_s, suspect_count, suspect_sum, suspect_s, suspect_outside_s, bad_count)
     SELECT $1, $2, false, f, $3, f + interval '1 hour', $4::int, $4::int * 25.0, m, m, 600, 0, 0, 0, 0, 0, 0
       FROM to_timestamp($5::float8 / 1000) f, (SELECT CASE WHEN $4::int > 0 THEN 25.0 END AS m) x`,
    [siteId, id, byHand, count, FIRST + n * HOUR],
  );

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  sensor = (await sensorsOf(query))['display-temperature'] ?? '';
  // As the table was before anybody counted, and what was rolled up then.
  await query('ALTER TABLE reading_roll_up DROP COLUMN late_count');
  for (const n of [0, 1]) await hour(sensor, n);
  await hour(sensor, 2, { count: 0 });
  await hour(sensor, 0, { byHand: true });
  await hour(DERIVED, 0);
  await lay('20261127050000_late');
  // One rolled up anew since, and one for the first time: in both it was counted that none was late.
  await query('DELETE FROM reading_roll_up WHERE sensor_id = $1 AND from_at = $2', [
    sensor,
    new Date(FIRST + HOUR).toISOString(),
  ]);
  for (const n of [1, 3]) await hour(sensor, n);
  await lay('20261128010000_late_not_counted');
});

const lateIn = async (id: string) =>
  (await rolledUp(siteId, id, { ...span, isDay: false })).map(({ fromMs, byHand, lateCount }) => [
    (fromMs - FIRST) / HOUR,
    byHand,
    lateCount,
  ]);

test('hours rolled up before it was counted what came late say that, and no others', async () => {
  expect(await lateIn(sensor)).toEqual([
    [0, false, null],
    [0, true, 0],
    [1, false, 0],
    [2, false, 0],
    [3, false, 0],
  ]);
  expect(await lateIn(DERIVED)).toEqual([[0, false, 0]]);
  const { buckets } = await drawnBuckets({ siteId, sensorId: sensor, ...span }, 'hours');
  expect(buckets.map(({ late, notCounted, count }) => [late, notCounted, count])).toEqual([
    [0, 6, 6],
    [0, 0, 6],
    [0, 0, 6],
  ]);
});

test('rolled up anew, they are counted', async () => {
  await storeReadings(siteId, [reading(sensor, new Date(FIRST + 60_000).toISOString(), 25)], {
    receivedAt: new Date(FIRST + 2 * HOUR),
  });
  const due = { sensorId: sensor, isDay: false, fromMs: FIRST, toMs: FIRST + HOUR };
  await inPlainTransaction((asking) => addDue(asking, siteId, [due]));
  await rollUpDue(new Date(FIRST + 24 * HOUR));
  expect(await lateIn(sensor)).toContainEqual([0, false, 1]);
});
