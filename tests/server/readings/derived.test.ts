import { beforeAll, describe, expect, test } from 'vitest';
import { oxygenPercent } from '#core/water/oxygen-units';
import { atmospheresFromAltitude } from '#core/water/pressure-from-altitude';
import { readSeries } from '#data/readings/series';
import { latestOf } from '#data/readings/series';
import { type NewReading, storeReadings } from '#data/readings/store-readings';
import { rollUpDue } from '#server/readings/roll-up-due';
import { settleSite } from '#server/readings/settle-site';
import { facility } from '../../_support/build-facility';
import { reservoir, sensor } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { entered } from '../../_support/given';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { smallSystem } from '../../_support/small-facility';
import { topOff } from '../../_support/build-equipment';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const NOW = new Date('2026-06-02T00:00:00Z');
let siteId = '';
let ids: Record<string, string> = {};
let pressureAtm = 1;

beforeAll(async () => {
  const base = facility();
  const system = smallSystem();
  const probe = (key: string, quantity: 'oxygen' | 'temperature' | 'level', tank = 'display') =>
    sensor({ key, name: key, quantity, tank });
  await keep({
    ...base,
    systems: [
      {
        ...system,
        salinity: entered(0),
        tanks: [...system.tanks, reservoir()],
        equipment: [...system.equipment, topOff({ tank: 'display', source: 'reservoir' })],
        sensors: [
          ...system.sensors,
          probe('do', 'oxygen'),
          probe('spare', 'temperature'),
          probe('res', 'level', 'reservoir'),
        ],
      },
    ],
  });
  ({ siteId } = await stored('harbour'));
  pressureAtm = atmospheresFromAltitude(base.site.altitudeM?.value ?? 0);
  await settleSite(siteId, NOW);
  const { rows } = await query('SELECT key, id FROM derived_series');
  ids = { ...(await sensorsOf(query)), ...Object.fromEntries(rows.map(({ key, id }) => [key, id])) };
});

const SATURATION = 'derived:oxygen-saturation:do';
const idOf = (key: string) => ids[key] ?? '';
const read = (key: string, at: string, value: number, given: Partial<NewReading> = {}) =>
  reading(idOf(key), at, value, given);

async function come(readings: NewReading[], correct = false): Promise<void> {
  await storeReadings(siteId, readings, { receivedAt: NOW, correct });
  while ((await settleSite(siteId, NOW)) === 'more');
}

async function seriesOn(key: string, day: string) {
  const found = await readSeries(siteId, idOf(key), new Date(`${day}T00:00:00Z`), new Date(`${day}T23:59:59Z`));
  return found.map(({ value, quality }) => ({ value, quality }));
}

const percent = (oxygen: number, temperature: number) => oxygenPercent(oxygen, temperature, 0, pressureAtm);

describe('a derived series', () => {
  test('follows at each instant of its leading sensor from the newest of the others, and stands at once with it', async () => {
    await come([
      read('display-temperature', '2026-05-01T08:00:00Z', 20),
      read('do', '2026-05-01T08:00:00Z', 8),
      read('do', '2026-05-01T08:59:00Z', 7),
      // More than an hour after the last temperature: nothing follows.
      read('do', '2026-05-01T09:01:00Z', 7),
    ]);
    expect(await seriesOn(SATURATION, '2026-05-01')).toEqual([
      { value: percent(8, 20), quality: 'good' },
      { value: percent(7, 20), quality: 'good' },
    ]);
    const latest = (await latestOf(siteId)).get(idOf(SATURATION));
    expect(latest).toMatchObject({ value: percent(7, 20), goodValue: percent(7, 20) });
  });

  test('is worked out anew when an input comes late or is corrected, and the same again changes nothing', async () => {
    await come([read('do', '2026-05-02T08:10:00Z', 8), read('do', '2026-05-02T08:20:00Z', 8)]);
    expect(await seriesOn(SATURATION, '2026-05-02')).toEqual([]);
    await come([read('display-temperature', '2026-05-02T08:00:00Z', 20)]);
    const both = [percent(8, 20), percent(8, 20)];
    expect((await seriesOn(SATURATION, '2026-05-02')).map(({ value }) => value)).toEqual(both);
    await come([read('display-temperature', '2026-05-02T08:15:00Z', 25)]);
    expect((await seriesOn(SATURATION, '2026-05-02')).map(({ value }) => value)).toEqual([
      percent(8, 20),
      percent(8, 25),
    ]);
    await come([read('display-temperature', '2026-05-02T08:15:00Z', 22)], true);
    expect((await seriesOn(SATURATION, '2026-05-02')).map(({ value }) => value)).toEqual([
      percent(8, 20),
      percent(8, 22),
    ]);
    await come([read('do', '2026-05-02T08:10:00Z', 8)]);
    const revisions = await query(
      'SELECT revision FROM reading WHERE sensor_id = $1 AND "at"::date = $2 ORDER BY "at", revision',
      [idOf(SATURATION), '2026-05-02'],
    );
    expect(revisions.rows.map(({ revision }) => revision)).toEqual([0, 0, 1, 2]);
  });

  test('is as doubtful as its inputs, and from a bad one nothing follows', async () => {
    const suspect = { quality: 'suspect', reason: 'unlikely' } as const;
    const bad = { quality: 'bad', reason: 'impossible' } as const;
    await come([
      read('display-temperature', '2026-05-03T08:00:00Z', 20),
      read('do', '2026-05-03T08:00:00Z', 8, suspect),
      read('do', '2026-05-03T08:01:00Z', 8, bad),
      read('do', '2026-05-03T08:02:00Z', 8),
    ]);
    expect((await seriesOn(SATURATION, '2026-05-03')).map(({ quality }) => quality)).toEqual(['suspect', 'good']);
    // Corrected to what cannot be: what stood before stands as bad.
    await come([read('display-temperature', '2026-05-03T08:00:00Z', 85, bad)], true);
    expect((await seriesOn(SATURATION, '2026-05-03')).map(({ quality }) => quality)).toEqual(['bad', 'bad']);
  });

  test('of a pair is their difference, and none when one of them is silent', async () => {
    await come([
      read('spare', '2026-05-04T08:00:00Z', 24.5),
      read('display-temperature', '2026-05-04T08:01:00Z', 25),
      read('display-temperature', '2026-05-04T08:06:00Z', 25),
    ]);
    expect(await seriesOn('derived:difference:display-temperature:spare', '2026-05-04')).toEqual([
      { value: 0.5, quality: 'good' },
    ]);
  });

  test('of a reservoir says how many litres went in a day, whatever somebody filled in', async () => {
    // 0.08 m²: 2 mm an hour are 3.84 L a day. At noon of the second day somebody fills 100 mm in.
    const readings = Array.from({ length: 40 }, (_, hour) =>
      read('res', new Date(Date.UTC(2026, 4, 5, hour, 30)).toISOString(), -2 * hour + (hour >= 36 ? 100 : 0)),
    );
    await come([...readings].reverse());
    const values = (await seriesOn('derived:top-off:res', '2026-05-06')).map(({ value }) => value);
    expect(values[1]).toBeCloseTo(0.08 * 2 * 24, 9);
    expect(values.at(-1)).toBeCloseTo(0.08 * 2 * 23, 9);
  });

  test('calls: what followed just now waits for the alarms to be held to it', async () => {
    await query('DELETE FROM reading_arrival');
    await come([read('display-temperature', '2026-06-01T23:59:00Z', 20), read('do', '2026-06-01T23:59:00Z', 8)]);
    const { rows } = await query('SELECT unnest(sensor_ids) AS id FROM reading_arrival');
    expect(rows.map(({ id }) => id)).toContain(idOf(SATURATION));
  });

  test('is rolled up like any other', async () => {
    while ((await rollUpDue(new Date('2026-06-05T00:00:00Z'))).isMore);
    const { rows } = await query('SELECT count(*)::int AS n FROM reading_roll_up WHERE sensor_id = $1', [
      idOf(SATURATION),
    ]);
    expect(rows[0].n).toBeGreaterThan(0);
  });
});

test('series come and go with the description; what was worked out stays', async () => {
  const { facility: described } = await stored('harbour');
  // Nobody knows the salinity, and no sensor reads it: no saturation follows.
  const systems = described.systems.map((one) => ({ ...one, salinity: { value: null, origin: 'unknown' as const } }));
  await keep({ ...described, systems });
  await settleSite(siteId, NOW);
  const { rows } = await query('SELECT key FROM derived_series WHERE retired_at IS NULL ORDER BY key');
  expect(rows.map(({ key }) => key)).toEqual(['derived:difference:display-temperature:spare', 'derived:top-off:res']);
  expect(await seriesOn(SATURATION, '2026-05-01')).toHaveLength(2);
  // Described again it is a series of its own, worked out for what is still there.
  await keep(described);
  while ((await settleSite(siteId, NOW)) === 'more');
  const again = await query('SELECT id FROM derived_series WHERE retired_at IS NULL AND key = $1', [SATURATION]);
  const found = await readSeries(
    siteId,
    again.rows[0].id,
    new Date('2026-05-01T00:00:00Z'),
    new Date('2026-05-02T00:00:00Z'),
  );
  expect(found).toHaveLength(2);
});
