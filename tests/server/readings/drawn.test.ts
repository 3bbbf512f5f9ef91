import { beforeAll, describe, expect, test } from 'vitest';
import { storeReadings } from '#data/readings/store-readings';
import { LOCAL_PERSON } from '#server/gate/who';
import { getSensorReadings, getSensorReadingsShape } from '#server/readings/get-sensor-readings';
import { listReadings } from '#server/readings/list-readings';
import { rollUpDue } from '#server/readings/roll-up-due';
import { settleSite } from '#server/readings/settle-site';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { reading, sensorsOf } from '../../_support/sensors-of';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const DAY = 86_400_000;
const LAST = Date.UTC(2026, 5, 30);
let siteId = '';
let sensor = '';

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  sensor = (await sensorsOf(query))['display-temperature'] ?? '';
  // Two readings a day for 40 days, at 06:00 and 18:00, but none for five of them; the last one beyond the limit.
  const days = Array.from({ length: 40 }, (_, i) => i).filter((i) => i < 20 || i >= 25);
  const readings = days.flatMap((i) =>
    [6, 18].map((hour) =>
      reading(sensor, new Date(LAST - i * DAY + hour * 3_600_000).toISOString(), i === 0 ? 28 : 24 + hour / 12),
    ),
  );
  await storeReadings(siteId, readings, { receivedAt: new Date(LAST + DAY) });
  while ((await settleSite(siteId, new Date(LAST + DAY))) === 'more');
});

const ask = async (span: string, key = 'display-temperature') => {
  const place = { site: 'harbour', system: facility().systems[0]?.key, sensor: key };
  const view = await getSensorReadings(
    LOCAL_PERSON,
    getSensorReadingsShape.parse({ ...place, span, until: '2026-06-30' }),
  );
  if (!view.ok) throw new Error(JSON.stringify(view.reason));
  return view.value;
};

describe('what is drawn of a sensor', () => {
  test('is the same before hours and days are rolled up and after', async () => {
    const before = await Promise.all(['week', 'month', 'sixty-days', 'year'].map((span) => ask(span)));
    while ((await rollUpDue(new Date(LAST + 3 * DAY))).isMore);
    expect((await query('SELECT count(*)::int AS n FROM reading_due')).rows).toEqual([{ n: 0 }]);
    const after = await Promise.all(['week', 'month', 'sixty-days', 'year'].map((span) => ask(span)));
    expect(after).toEqual(before);
    expect(before.map(({ buckets }) => buckets.reduce((sum, { count }) => sum + count, 0))).toEqual([14, 52, 70, 70]);
  });

  test('of a year are its days, with no line over those in which nothing came', async () => {
    const { buckets, gapMs, rows } = await ask('year');
    expect(buckets).toHaveLength(35);
    expect(buckets[0]).toMatchObject({ low: 24.5, high: 25.5, mean: 25, count: 2 });
    const gaps = buckets.slice(1).filter(({ fromMs }, i) => fromMs - (buckets[i]?.toMs ?? 0) > gapMs);
    expect(gaps).toHaveLength(1);
    expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(70);
  });

  test('says how long it was outside the limits of its alarms, of the time for which something is known', async () => {
    const { outside, limits } = await ask('week');
    expect(limits.map(({ value }) => value)).toEqual([26.5, 23.5]);
    // A reading holds for an hour: two of the last day lie beyond, of 14 in the week.
    expect(outside).toEqual({ outsideS: 7200, heldS: 14 * 3600 });
  });

  test('says of how much that nobody knew it in its time, by readings, hours and days alike', async () => {
    for (const [span, count] of [
      ['day', 2],
      ['week', 14],
      ['year', 70],
    ] as const)
      expect(
        (await ask(span)).rows.reduce((sum, { late }) => sum + late, 0),
        span,
      ).toBe(count);
  });

  test('of a day is every reading', async () => {
    const { buckets, outside } = await ask('day');
    expect(buckets.map(({ count, mean }) => [count, mean])).toEqual([
      [1, 28],
      [1, 28],
    ]);
    expect(outside).toBeNull();
  });
});

test('a derived series stands in the list and is drawn, and says what it follows from', async () => {
  const listed = await listReadings(LOCAL_PERSON, { site: 'harbour' });
  const lines = listed.ok
    ? listed.value.systems.flatMap(({ sensors }) => sensors.filter(({ isDerived }) => isDerived))
    : [];
  expect(lines.map(({ key }) => key)).toContain('derived:oxygen-saturation:display-oxygen');
  const view = await ask('day', 'derived:oxygen-saturation:display-oxygen');
  expect(view.derived?.from.map(({ key }) => key)).toEqual(['display-oxygen', 'display-temperature', 'sump-salinity']);
  expect(() => getSensorReadingsShape.parse({ site: 'harbour', system: 'a', sensor: 'derived:else:b' })).toThrow(
    'derived series',
  );
});
