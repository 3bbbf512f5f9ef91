import { beforeAll, describe, expect, test } from 'vitest';
import { inTransaction } from '#data/transaction';
import { plainReadings } from '#data/readings/chart';
import { latestOf } from '#data/readings/series';
import { setAlias } from '#data/readings/sensor-names';
import { endSource } from '#data/readings/sources';
import { now } from '#server/clock';
import { sensor, system } from '../../_support/build-system';
import { facility, site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { sensorsOf } from '../../_support/sensors-of';
import { aSource, post } from '../../_support/sources';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
let siteId = '';
let token = '';
let ids: Record<string, string> = {};

beforeAll(async () => {
  const base = system();
  const more = [
    sensor({ key: 'display-ph', name: 'Display pH', quantity: 'ph', tank: 'display', accuracy: undefined }),
    sensor({
      key: 'display-saturation',
      name: 'Saturation',
      quantity: 'oxygen-saturation',
      tank: 'display',
      accuracy: undefined,
    }),
  ];
  await keep(facility({ systems: [{ ...base, sensors: [...base.sensors, ...more] }] }));
  ({ siteId } = await stored('harbour'));
  ids = await sensorsOf(query);
  ({ token } = await aSource(siteId));
});

const place = (key: string) => `${system().key}/${key}`;
const TEMPERATURE = place('display-temperature');
const at = (iso: string) => Date.parse(iso) / 1000;
const answerTo = async (...given: Parameters<typeof post> extends [string, ...infer Rest] ? Rest : never) =>
  await (await post(token, ...given)).json();

describe('readings that a source sends', () => {
  test('are stored in the sensor’s unit and judged, and sent again are repeats', async () => {
    const pack = [
      { bn: `${system().key}/`, bt: at('2026-05-01T08:00:00Z'), n: 'display-temperature', u: 'K', v: 302.25 },
      { n: 'return-flow', u: 'l/s', v: 0.5 },
      { n: 'floor', vb: true },
      { n: 'display-temperature', u: 'degF', v: 85, t: 60 },
      { n: 'display-temperature', u: 'Cel', v: 85, t: 120 },
    ];
    const first = await answerTo(pack);
    expect(first).toEqual({
      stored: 5,
      repeat: 0,
      conflict: 0,
      corrected: 0,
      refused: 0,
      late: 5,
      records: [
        ...Array.from({ length: 4 }, () => ({ result: 'stored', quality: 'good', late: true })),
        { result: 'stored', quality: 'bad', reason: 'power-on', late: true },
      ],
    });
    const latest = await latestOf(siteId);
    expect(latest.get(ids['return-flow'] ?? '')).toMatchObject({ value: 1800, origin: 'device' });
    expect(latest.get(ids.floor ?? '')).toMatchObject({ value: 1 });
    const display = latest.get(ids['display-temperature'] ?? '');
    expect(display).toMatchObject({ value: 85, quality: 'bad' });
    expect(display?.goodValue).toBeCloseTo(29.444, 3);
    expect((await answerTo(pack)).records.map(({ result }: { result: string }) => result)).toEqual(
      Array(5).fill('repeat'),
    );
  });

  test('sent ten times, four at once and out of order by a day, are stored once', async () => {
    const name = place('display-ph');
    const minutes = Array.from({ length: 280 }, (_, i) => i * 5);
    const packOf = (day: string) =>
      minutes.map((minute) => ({ n: name, t: at(`${day}T00:00:00Z`) + minute * 60, v: 8.1 }));
    const [later, earlier] = [packOf('2026-04-12'), packOf('2026-04-11')];
    const packs = [
      later,
      later,
      earlier,
      [...earlier].reverse(),
      later,
      earlier,
      [...later].reverse(),
      earlier,
      later,
      earlier,
    ];
    const sources = await Promise.all(packs.map((_, i) => aSource(siteId, `Sender ${i}`)));
    let stored = 0;
    for (const first of [0, 4, 8]) {
      const sent = packs.slice(first, first + 4).map((pack, i) => post(sources[first + i]?.token ?? '', pack));
      for (const answer of await Promise.all(sent)) {
        const told = await answer.json();
        expect(told).toMatchObject({ conflict: 0, refused: 0 });
        expect(told.stored + told.repeat).toBe(280);
        stored += told.stored;
      }
    }
    expect(stored).toBe(560);
    const { rows } = await query('SELECT count(*)::int AS n FROM reading WHERE sensor_id = $1', [ids['display-ph']]);
    expect(rows).toEqual([{ n: 560 }]);
    // What came last is of the day before, and hides nothing of the day after.
    expect((await latestOf(siteId)).get(ids['display-ph'] ?? '')).toMatchObject({
      atMs: Date.parse('2026-04-12T23:15:00Z'),
    });
  });

  test('conflict with another value, and supersede it when sent as a correction', async () => {
    const of = (v: number) => [{ n: TEMPERATURE, t: at('2026-05-02T08:00:00Z'), v }];
    expect((await answerTo(of(25))).records).toMatchObject([{ result: 'stored' }]);
    expect(await answerTo(of(26))).toMatchObject({ conflict: 1, records: [{ result: 'conflict' }] });
    expect(await answerTo(of(26), { query: '?correct=1' })).toMatchObject({ corrected: 1 });
    expect(await answerTo(of(26))).toMatchObject({ repeat: 1 });
  });

  test('are told to be late as they are marked: what is new and came more than an hour after it was taken', async () => {
    const nowS = Math.floor(now().getTime() / 1000);
    const of = (v: number) => [7200, 3660, 3540, 0].map((ago) => ({ n: place('return-flow'), t: nowS - ago, v }));
    const first = await answerTo([...of(900), { n: 'nobody/knows', t: nowS - 7200, v: 1 }]);
    expect(first).toMatchObject({ stored: 4, refused: 1, late: 2 });
    const marks = first.records.map(({ late }: { late?: true }) => late === true);
    expect(marks).toEqual([true, true, false, false, false]);
    const from = new Date((nowS - 7200) * 1000);
    const kept = await plainReadings(siteId, ids['return-flow'] ?? '', {
      from,
      to: new Date(nowS * 1000 + 1),
      most: 9,
    });
    expect(kept.map(({ isLate }) => isLate)).toEqual(marks.slice(0, 4));
    expect(await answerTo(of(900))).toMatchObject({ repeat: 4, late: 0 });
    expect(await answerTo(of(950))).toMatchObject({ conflict: 4, late: 0 });
    expect(await answerTo(of(950), { query: '?correct=1' })).toMatchObject({ corrected: 4, late: 0 });
    const lines = `name,time,value\n${place('floor')},${from.toISOString()},dry\n${place('floor')},${now().toISOString()},dry`;
    expect(await answerTo(lines, { type: 'text/csv' })).toMatchObject({ stored: 2, late: 1 });
  });

  test('may come as CSV', async () => {
    const lines = [
      '\uFEFFTime,Name,Value,Unit',
      `2026-05-03T10:00:00+02:00,${TEMPERATURE},25.5,°C`,
      `2026-05-03t08:01:00z,${TEMPERATURE},77,F`,
      `2026-05-03T08:00:00Z,${place('floor')},dry,`,
      `2026-05-03 08:02,${TEMPERATURE},25,`,
      `2026-02-30T08:02:00Z,${TEMPERATURE},25,`,
      `2026-05-03T08:03:00Z,${TEMPERATURE},"25,5",`,
      `2026-05-03T08:03:00Z,${TEMPERATURE},NaN,`,
      `2026-05-03T08:04:00Z,${TEMPERATURE},25`,
    ].join('\r\n');
    const { records } = await answerTo(lines, { type: 'text/csv; charset=utf-8' });
    const time = 'must be an instant with its zone, such as 2026-05-01T08:30:00Z';
    expect(records).toEqual([
      { result: 'stored', quality: 'good', late: true },
      { result: 'stored', quality: 'good', late: true },
      { result: 'stored', quality: 'good', late: true },
      { result: 'refused', field: 'time', why: time },
      { result: 'refused', field: 'time', why: time },
      { result: 'refused', field: 'value', why: 'must be a number' },
      { result: 'refused', field: 'value', why: 'must be a number' },
      { result: 'refused', field: '', why: 'has 3 cells where the first line names 4' },
    ]);
  });

  test('are refused one by one, each saying which field and why', async () => {
    const t = at('2026-05-04T08:00:00Z');
    const pack = [
      { bt: t, n: TEMPERATURE, v: 25 },
      { n: 'nobody/knows', v: 1, u: 'Cel' },
      { n: TEMPERATURE, v: 25, u: 'lx', t: 1 },
      { n: TEMPERATURE, v: 25, u: 'W', t: 1 },
      { n: TEMPERATURE, vb: true, t: 1 },
      { n: TEMPERATURE, vs: 'warm', t: 1 },
      { n: place('return-flow'), v: 1e306, u: 'm3/s', t: 1 },
      { bt: now().getTime() / 1000 + 301, n: TEMPERATURE, v: 25 },
      { bt: 300_000_000, n: TEMPERATURE, v: 25 },
      { bt: 1e300, n: TEMPERATURE, v: 25 },
    ];
    const { records } = await answerTo(pack);
    const ahead = 'is more than 5 minutes ahead: the clock of the source is wrong';
    expect(
      records.map(({ result, field, why }: Record<string, string>) => (why ? `${field}: ${why}` : result)),
    ).toEqual([
      'stored',
      'n: no sensor of this site is called so',
      'u: is no unit that is understood here',
      'u: is no unit of temperature',
      'v: yes or no is no reading of temperature',
      'vs: is no number: only v and vb are readings',
      'v: is too large a number',
      `t: ${ahead}`,
      't: is before 1990',
      `t: ${ahead}`,
    ]);
  });

  test('are believed when the clock of the source is a little ahead', async () => {
    expect(await answerTo([{ n: TEMPERATURE, v: 25.01, t: 200 }])).toMatchObject({ stored: 1 });
  });

  test('of probes that hang in nothing are suspect together', async () => {
    const pack = ['display-oxygen', 'display-saturation', 'display-ph'].map((n) => ({ n: place(n), v: 0 }));
    const [first, ...rest] = pack;
    const { records } = await answerTo([{ bt: at('2026-05-05T08:00:00Z'), ...first }, ...rest]);
    expect(records).toMatchObject([{ reason: 'probes-out' }, { reason: 'probes-out' }, { quality: 'bad' }]);
  });

  test('under a name somebody said is a sensor’s are that sensor’s', async () => {
    const pack = [{ n: 'probe-7', v: 25, t: at('2026-05-06T08:00:00Z') }];
    expect(await answerTo(pack)).toMatchObject({ refused: 1 });
    const seen = async () => (await query('SELECT name, value, unit FROM unknown_name ORDER BY name')).rows;
    expect(await seen()).toContainEqual({ name: 'probe-7', value: 25, unit: null });
    await inTransaction((tx) => setAlias(tx, siteId, 'probe-7', ids['display-temperature'] ?? ''));
    expect(await seen()).not.toContainEqual(expect.objectContaining({ name: 'probe-7' }));
    expect(await answerTo(pack)).toMatchObject({ stored: 1 });
  });

  test('under names of no sensor are remembered, and at most 500 of them', async () => {
    const pack = Array.from({ length: 2000 }, (_, i) => ({ n: `nobody-${i}`, v: i }));
    expect(await answerTo(pack)).toMatchObject({ refused: 2000 });
    expect((await query('SELECT count(*)::int AS n FROM unknown_name')).rows).toEqual([{ n: 500 }]);
  });

  test('of a retired sensor, or of another site, are refused', async () => {
    const { token: elsewhere } = await aSource((await keepOther()).siteId);
    const pack = [{ n: TEMPERATURE, v: 25, t: at('2026-05-07T08:00:00Z') }];
    expect(await (await post(elsewhere, pack)).json()).toMatchObject({ stored: 1 });
    await query(`UPDATE sensor SET retired_at = now() WHERE site_id <> $1 AND key = 'display-temperature'`, [siteId]);
    await query('UPDATE site SET revision = revision + 1');
    expect(await (await post(elsewhere, pack)).json()).toMatchObject({ refused: 1 });
    expect(await answerTo(pack)).toMatchObject({ stored: 1 });
  });
});

async function keepOther() {
  await keep(facility({ site: site({ key: 'pier', name: 'Pier' }) }));
  return await stored('pier');
}

describe('a token', () => {
  test('of nobody, half of one, one that was ended, and none at all are answered alike', async () => {
    const ended = await aSource(siteId, 'Old gateway');
    expect((await post(ended.token, [{ n: 'x', v: 1 }])).status).toBe(200);
    expect(await inTransaction((tx) => endSource(tx, siteId, ended.id, now()))).toBe(true);
    expect(await inTransaction((tx) => endSource(tx, siteId, ended.id, now()))).toBe(false);
    const other = token.replace(/.$/, (last) => (last === 'A' ? 'B' : 'A'));
    for (const wrong of [ended.token, other, token.slice(0, -1), `${token}A`, 'x', '']) {
      const answer = await post(wrong, [{ n: TEMPERATURE, v: 1 }]);
      expect(answer.status).toBe(401);
      expect(answer.headers.get('www-authenticate')).toBe('Bearer');
      expect(await answer.json()).toEqual({ said: 'The token is none of a source that may send readings here.' });
    }
  });

  test('is kept as its hash alone, and its use is noted', async () => {
    const { rows } = await query('SELECT * FROM reading_source');
    expect(JSON.stringify(rows)).not.toContain(token.slice(-43));
    expect(rows.find(({ name }) => name === 'Gateway by the pumps').used_at).not.toBeNull();
  });
});
