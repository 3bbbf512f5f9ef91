import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readSeries } from '#data/readings/series';
import { storeReadings } from '#data/readings/store-readings';
import { restoreBackup } from '#server/backup/restore-backup';
import { writeBackup } from '#server/backup/write-backup';
import { ROOT } from '../../../app/_start/places.mjs';
import { facility } from '../../_support/build-facility';
import { type Copy, emptyDatabase, freshDatabase } from '../../_support/database';
import { everyRow } from '../../_support/same-rows';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { aSource } from '../../_support/sources';
import { keep, stored } from '../../_support/stored';
import { temporaryFolder } from '../../_support/temporary-folder';

const { query } = freshDatabase();
const file = join(temporaryFolder(), 'readings.backup');
const receivedAt = new Date('2026-06-01T12:00:00Z');
let copy: Copy;
let siteId = '';
let sensor = '';

const PARTS = `SELECT c.relname FROM pg_inherits i JOIN pg_class c ON c.oid = i.inhrelid
                WHERE i.inhparent = 'reading'::regclass ORDER BY 1`;

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  [sensor = ''] = Object.values(await sensorsOf(query));
  const { id } = await aSource(siteId);
  const said = { quality: 'suspect', reason: 'unlikely', flag: 'tab\t, new\nline, \\N' } as const;
  const readings = [
    reading(sensor, '2025-12-31T23:59:59.999Z', 0.1, said),
    reading(sensor, '2026-05-01T00:00:00Z', 1e-300),
  ];
  await storeReadings(siteId, readings, { receivedAt, cameBy: id });
  await storeReadings(siteId, [reading(sensor, '2026-05-01T00:00:00Z', -25)], { receivedAt, correct: true });
  await writeBackup(file, new Date());
  copy = await emptyDatabase();
  await restoreBackup({ path: file, url: copy.url, migrations: join(ROOT, 'prisma/migrations'), takeBroken: false });
});
afterAll(async () => {
  await copy?.drop();
});

describe('a backup that holds readings', () => {
  test('comes back row for row, in the same parts, with what no alarm was held to yet', async () => {
    const rows = await everyRow(query);
    expect(rows.reading).toHaveLength(3);
    expect(rows.reading_arrival).toHaveLength(2);
    expect(rows.reading_source).toHaveLength(1);
    expect(await everyRow(copy.query)).toEqual(rows);
    const parts = (await query(PARTS)).rows;
    expect(parts).toHaveLength(2);
    expect((await copy.query(PARTS)).rows).toEqual(parts);
  });

  test('goes on taking readings, and they are guarded as before', async () => {
    await expect(copy.query('DELETE FROM reading')).rejects.toThrow('never changed or removed');
    await copy.query(`SELECT make_reading_part('2026-06-01')`);
    expect((await copy.query(PARTS)).rows).toHaveLength(3);
    const series = await readSeries(siteId, sensor, new Date('2025-01-01'), receivedAt);
    expect(series.map(({ value, quality }) => [value, quality])).toEqual([
      [0.1, 'suspect'],
      [-25, 'good'],
    ]);
  });
});
