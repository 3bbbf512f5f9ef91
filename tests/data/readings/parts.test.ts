import { beforeAll, describe, expect, test } from 'vitest';
import { ensureParts, forgetParts, hasPart, monthsFrom } from '#data/readings/parts';
import { storeReadings } from '#data/readings/store-readings';
import { pool } from '#data/pool';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const receivedAt = new Date('2026-06-01T12:00:00Z');
let siteId = '';
let sensor = '';

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  [sensor = ''] = Object.values(await sensorsOf(query));
});

const send = (at: string) => storeReadings(siteId, [reading(sensor, at, 1)], { receivedAt });
const parts = async (): Promise<string[]> =>
  (
    await query(`SELECT relname FROM pg_class WHERE relnamespace = 'reading_parts'::regnamespace AND relkind = 'r'
                 ORDER BY relname`)
  ).rows.map(({ relname }) => relname);

describe('a part of the readings', () => {
  test('is there before the first reading of its month, also when many come at once', async () => {
    await Promise.all(Array.from({ length: 8 }, (_, i) => ensureParts([new Date(Date.UTC(2025, i % 2, 3))])));
    expect(await parts()).toEqual(['reading_2025_01', 'reading_2025_02']);
    expect(await send('2025-03-31T23:59:59.999Z')).toEqual(['stored']);
    expect(await send('2025-04-01T00:00:00.000Z')).toEqual(['stored']);
    expect(await parts()).toEqual(['reading_2025_01', 'reading_2025_02', 'reading_2025_03', 'reading_2025_04']);
  });

  test('that was taken away since is made again', async () => {
    await send('2024-02-29T00:00:00Z');
    await query('DROP TABLE reading_parts.reading_2024_02');
    expect(await hasPart(new Date('2024-02-29T00:00:00Z'))).toBe(false);
    expect(await send('2024-02-29T00:00:00Z')).toEqual(['stored']);
    expect(await hasPart(new Date('2024-02-29T00:00:00Z'))).toBe(true);
  });

  test('holds the rules of the whole: keys, checks, and rows that are only added', async () => {
    await send('2024-05-01T00:00:00Z');
    const row = `'${siteId}', '${sensor}', '2024-05-01T00:00:00Z', 1`;
    const add = (rest: string) => query(`INSERT INTO reading_parts.reading_2024_05 VALUES (${row}, ${rest})`);
    await expect(add(`0, 1, 0, NULL, NULL, NULL, now()`)).rejects.toThrow('duplicate key');
    await expect(add(`1, 1, 1, NULL, NULL, NULL, now()`)).rejects.toThrow('reading_reasoned');
    await expect(query('DELETE FROM reading_parts.reading_2024_05')).rejects.toThrow('never changed or removed');
  });

  test('is made while somebody is storing, and holds nobody up', async () => {
    const client = await pool().connect();
    try {
      await client.query('BEGIN');
      await client.query(
        `INSERT INTO reading VALUES ('${siteId}', '${sensor}', '2025-01-02', 1, 0, 1, 0, NULL, NULL, NULL, now())`,
      );
      await ensureParts([new Date('2025-09-01T00:00:00Z')]);
      await client.query('ROLLBACK');
    } finally {
      client.release();
    }
    expect(await parts()).toContain('reading_2025_09');
  });

  test('is refused for days that no reading can be of', async () => {
    forgetParts();
    await expect(ensureParts([new Date('1989-12-31T00:00:00Z')])).rejects.toThrow('no part of the readings');
    await expect(ensureParts([new Date('2199-01-01T00:00:00Z')])).rejects.toThrow('no part of the readings');
  });

  test('is a month of UTC', () => {
    const months = monthsFrom(new Date('2026-11-30T23:00:00Z'), 3).map((month) => month.toISOString());
    expect(months).toEqual(['2026-11-01T00:00:00.000Z', '2026-12-01T00:00:00.000Z', '2027-01-01T00:00:00.000Z']);
  });
});
