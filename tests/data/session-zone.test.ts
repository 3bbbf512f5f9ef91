import { beforeAll, describe, expect, test } from 'vitest';
import { database } from '#data/client';
import { pool } from '#data/pool';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();
/** In the hour that New York has twice, where a zone that is not UTC does the most harm. */
const INSTANT = new Date('2026-11-01T05:30:00Z');

beforeAll(async () => {
  const { rows } = await query('SELECT current_database() AS name');
  await query(`ALTER DATABASE ${rows[0].name} SET timezone = 'America/New_York'`);
});

describe('a database whose own zone is New York', () => {
  test('is in New York for those who do not ask otherwise', async () => {
    const { rows } = await query('SHOW timezone');
    expect(rows).toEqual([{ TimeZone: 'America/New_York' }]);
  });

  test('is in UTC on every connection of the pool, and for Prisma', async () => {
    const { rows } = await pool().query('SHOW timezone');
    expect(rows).toEqual([{ TimeZone: 'UTC' }]);
    expect(await database().$queryRaw`SELECT current_setting('TimeZone') AS zone`).toEqual([{ zone: 'UTC' }]);
  });

  test('keeps the instant that Prisma wrote', async () => {
    await database().workerSighting.create({ data: { worker: 'prisma', seenAt: INSTANT } });
    const { rows } = await query("SELECT seen_at FROM worker_sighting WHERE worker = 'prisma'");
    expect(rows).toEqual([{ seen_at: INSTANT }]);
  });

  test('gives Prisma the instant that was written by hand', async () => {
    await query(`INSERT INTO worker_sighting VALUES ('hand', '2026-11-01T05:30:00Z')`);
    const found = await database().workerSighting.findUniqueOrThrow({ where: { worker: 'hand' } });
    expect(found.seenAt).toEqual(INSTANT);
  });

  test('finds the row by its instant in raw SQL', async () => {
    await database().workerSighting.create({ data: { worker: 'raw', seenAt: INSTANT } });
    const found = await database().$queryRaw`
      SELECT worker FROM worker_sighting WHERE worker = 'raw' AND seen_at = ${INSTANT}`;
    expect(found).toEqual([{ worker: 'raw' }]);
  });
});
