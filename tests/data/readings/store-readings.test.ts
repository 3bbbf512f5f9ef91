import { beforeAll, describe, expect, test } from 'vitest';
import { readSeries } from '#data/readings/series';
import { type NewReading, type Stored, storeReadings, storeReadingsIn } from '#data/readings/store-readings';
import { inTransaction } from '#data/transaction';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const RECEIVED = new Date('2026-06-01T12:00:00Z');
let siteId = '';
let sensor = '';
let other = '';

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  [sensor = '', other = ''] = Object.values(await sensorsOf(query));
});

const send = (readings: NewReading[], correct = false): Promise<Stored[]> =>
  storeReadings(siteId, readings, { receivedAt: RECEIVED, correct });
const valuesOn = async (day: string, of = sensor) =>
  (await readSeries(siteId, of, new Date(`${day}T00:00:00Z`), new Date(`${day}T23:59:59Z`))).map(({ value }) => value);
const rowsOn = async (day: string): Promise<number> =>
  (await query(`SELECT count(*)::int AS n FROM reading WHERE "at"::date = $1`, [day])).rows[0].n;

describe('a reading', () => {
  test('is stored, and sent again it is a repeat that changes nothing', async () => {
    const readings = [reading(sensor, '2026-05-01T08:00:00Z', 25.1), reading(other, '2026-05-01T08:00:00.123Z', -0)];
    expect(await send(readings)).toEqual(['stored', 'stored']);
    expect(await send(readings)).toEqual(['repeat', 'repeat']);
    expect(await rowsOn('2026-05-01')).toBe(2);
  });

  test('with another value for the same instant is a conflict, and what was there stands', async () => {
    expect(await send([reading(sensor, '2026-05-02T08:00:00Z', 25.1)])).toEqual(['stored']);
    expect(await send([reading(sensor, '2026-05-02T08:00:00Z', 25.2)])).toEqual(['conflict']);
    expect(await valuesOn('2026-05-02')).toEqual([25.1]);
  });

  test('sent as a correction supersedes, and both stay', async () => {
    await send([reading(sensor, '2026-05-03T08:00:00Z', 25.1)]);
    expect(await send([reading(sensor, '2026-05-03T08:00:00Z', 25.2)], true)).toEqual(['corrected']);
    expect(await send([reading(sensor, '2026-05-03T08:00:00Z', 25.3)], true)).toEqual(['corrected']);
    expect(await send([reading(sensor, '2026-05-03T08:00:00Z', 25.3)], true)).toEqual(['repeat']);
    expect(await send([reading(sensor, '2026-05-03T08:00:00Z', 25.1)])).toEqual(['conflict']);
    expect(await valuesOn('2026-05-03')).toEqual([25.3]);
    expect(await rowsOn('2026-05-03')).toBe(3);
  });

  test('that is new is stored by a correction too', async () => {
    expect(await send([reading(sensor, '2026-05-04T08:00:00Z', 25.1)], true)).toEqual(['stored']);
  });

  test('twice in one batch is a repeat or a conflict of the first', async () => {
    const at = '2026-05-05T08:00:00Z';
    const batch = [reading(sensor, at, 25), reading(other, at, 1), reading(sensor, at, 25), reading(sensor, at, 26)];
    expect(await send(batch)).toEqual(['stored', 'stored', 'repeat', 'conflict']);
    expect(await send([reading(sensor, at, 26), reading(sensor, at, 27)], true)).toEqual(['corrected', 'corrected']);
    expect(await valuesOn('2026-05-05')).toEqual([27]);
  });

  test('by hand stands beside the device’s of the same instant', async () => {
    const at = '2026-05-06T08:00:00Z';
    const batch = [reading(sensor, at, 25), reading(sensor, at, 25.4, { origin: 'hand' })];
    expect(await send(batch)).toEqual(['stored', 'stored']);
    expect(await valuesOn('2026-05-06')).toEqual([25, 25.4]);
  });

  test('keeps its quality, why, and what the source said of it', async () => {
    const said = { quality: 'bad', reason: 'power-on', flag: 'a "quoted" \\ {word}, NULL' } as const;
    await send([reading(sensor, '2026-05-07T08:00:00Z', 85, said)]);
    const { rows } = await query(`SELECT quality, reason, flag FROM reading WHERE "at"::date = '2026-05-07'`);
    expect(rows).toEqual([{ ...said, quality: 2 }]);
  });

  test('of no known sensor, or without a finite value, breaks the whole batch off', async () => {
    const nobodys = '019a0000-0000-7000-8000-0000000000ff';
    const good = reading(sensor, '2026-05-08T08:00:00Z', 25);
    await expect(send([good, reading(nobodys, '2026-05-08T08:00:00Z', 25)])).rejects.toThrow('reading_latest');
    await expect(send([good, reading(other, '2026-05-08T08:00:00Z', Number.NaN)])).rejects.toThrow('is_a_number');
    expect(await rowsOn('2026-05-08')).toBe(0);
  });

  test('is kept together with what else a transaction does, or not at all', async () => {
    const given = [reading(sensor, '2026-05-09T08:00:00Z', 25, { origin: 'hand' })];
    const broken = inTransaction(async (tx) => {
      await storeReadingsIn(tx, siteId, given, { receivedAt: RECEIVED });
      throw new Error('no');
    });
    await expect(broken).rejects.toThrow('no');
    expect(await rowsOn('2026-05-09')).toBe(0);
    const kept = await inTransaction((tx) => storeReadingsIn(tx, siteId, given, { receivedAt: RECEIVED }));
    expect(kept).toEqual(['stored']);
    expect(await rowsOn('2026-05-09')).toBe(1);
  });
});

describe('several who write at once', () => {
  const batchOf = (value: number, order: 1 | -1): NewReading[] =>
    Array.from({ length: 400 }, (_, i) =>
      reading(i % 2 ? sensor : other, new Date(Date.UTC(2026, 4, 10, 0, i)).toISOString(), value),
    ).sort((a, b) => order * (a.at.getTime() - b.at.getTime()));

  test('store each reading once and agree which value stands, in whatever order they send', async () => {
    const outcomes = await Promise.all([1, 2, 3, 4, 5, 6].map((n) => send(batchOf(n % 2, n % 3 ? 1 : -1))));
    const storedOnes = outcomes.flat().filter((outcome) => outcome === 'stored');
    expect(storedOnes).toHaveLength(400);
    expect(await rowsOn('2026-05-10')).toBe(400);
    expect(outcomes.flat().filter((outcome) => outcome === 'repeat').length).toBeGreaterThan(0);
  });

  test('and correct at once, count their corrections one after the other', async () => {
    const at = '2026-05-11T08:00:00Z';
    await send([reading(sensor, at, 1)]);
    const outcomes = await Promise.all([2, 3, 4, 5].map((value) => send([reading(sensor, at, value)], true)));
    expect(outcomes.flat()).toEqual(['corrected', 'corrected', 'corrected', 'corrected']);
    const { rows } = await query(`SELECT revision FROM reading WHERE "at" = $1 ORDER BY 1`, [at]);
    expect(rows.map(({ revision }) => revision)).toEqual([0, 1, 2, 3, 4]);
  });
});
