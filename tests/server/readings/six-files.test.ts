import { beforeAll, describe, expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { excerpt, look, type SaidColumns, saying, siteWithSensors, takeIn } from '../../_support/logger-files';

// What each file is, and what it holds, is told in tests/reference/loggers/sources.md; the figures below were counted and read
// off the excerpts by eye.
const { query } = freshDatabase();
let at = '';
const said = (columns: SaidColumns): SaidColumns =>
  Object.fromEntries(Object.entries(columns).map(([place, [key, ...rest]]) => [place, [`${at}/${key}`, ...rest]]));

beforeAll(async () => {
  at = await siteWithSensors({
    'lake-oxygen': 'oxygen',
    'lake-water': 'temperature',
    'lake-saturation': 'oxygen-saturation',
    'lake-pressure': 'pressure',
    'epoch-water': 'temperature',
    'epoch-oxygen': 'oxygen',
    ammonium: 'ammonia',
    phosphate: 'phosphate',
    'buoy-water': 'temperature',
    'buoy-saturation': 'oxygen-saturation',
    'buoy-oxygen': 'oxygen',
    'buoy-ph': 'ph',
    'tide-water': 'temperature',
    'surface-oxygen': 'oxygen',
    'surface-ammonium': 'ammonia',
    'surface-ph': 'ph',
  });
});

/** Readings of a sensor in order of time: when (UTC), value, quality, reason, flag. */
async function readings(key: string) {
  const { rows } = await query(
    `SELECT r.at, r.value, r.quality, r.reason, r.flag FROM reading r JOIN sensor s ON s.site_id = r.site_id AND s.id = r.sensor_id
      WHERE s.key = $1 ORDER BY r.at`,
    [key],
  );
  return rows as { at: Date; value: number; quality: number; reason: string | null; flag: string | null }[];
}
const when = ({ at: instant }: { at: Date }) => instant.toISOString();

describe('a title line, a byte order mark, a zone in the header', () => {
  test('needs nothing said but the sensors, and stands at one offset all year', async () => {
    const file = excerpt('lake-oxygen.csv');
    const seen = await look(file);
    expect(seen.draft).toMatchObject({ encoding: 'utf-8', delimiter: ',', zone: '-04:00', time: { order: 'mdy' } });
    // The one sensor of pressure can only be the one column of pressure.
    expect(seen.questions).toEqual([]);
    expect(seen.draft.columns.filter(({ sensor }) => sensor !== null)).toMatchObject([{ place: 5, unit: 'psi' }]);
    const columns = said({
      1: ['lake-oxygen', 'mg/L'],
      2: ['lake-water', '°C'],
      4: ['lake-saturation', '%'],
      5: ['lake-pressure', 'psi'],
    });
    const { outcome } = await takeIn(file, saying(seen, columns));
    expect(outcome).toMatchObject({ rows: 33, stored: 132, refused: 0, missing: 0, order: { jumps: 0 } });
    const water = await readings('lake-water');
    // 10/11/2018 17:01 at four hours behind UTC, in summer and in winter alike.
    expect(water.slice(0, 1).map(when)).toEqual(['2018-10-11T21:01:00.000Z']);
    expect(water.filter((one) => when(one).startsWith('2019-02-17')).length).toBe(20);
    const pressure = await readings('lake-pressure');
    // 13.6984 psi; 6.894757 kPa each (NIST SP 811, appendix B).
    expect(pressure[0]?.value).toBeCloseTo(94.447, 2);
  });
});

describe('seconds since 1970, plus signs, a scale of quality', () => {
  test('asks from which number on a value is good, and keeps the number as a flag', async () => {
    const file = excerpt('epoch-oxygen.txt');
    const seen = await look(file);
    const columns = said({ 2: ['epoch-water', '°C'], 3: ['epoch-oxygen', 'mg/L'] });
    const open = await look(file, { draft: saying(seen, columns) });
    expect(open.questions.map(({ field }) => field)).toEqual(['goodFrom']);
    const { outcome } = await takeIn(file, saying(seen, columns, { goodFrom: 1 }));
    expect(outcome).toMatchObject({ rows: 17, stored: 34, refused: 0 });
    const water = await readings('epoch-water');
    // 1576250220 s, by `date -u -d @1576250220`.
    expect(when(water[0] ?? { at: new Date(0) })).toBe('2019-12-13T15:17:00.000Z');
    expect(water.slice(0, 3).map(({ value, quality, reason, flag }) => [value, quality, reason, flag])).toEqual([
      [14.287, 0, null, '+1.004'],
      [11.875, 0, null, '+1.004'],
      [7.474, 1, 'flagged', '+0.997'],
    ]);
  });
});

describe('quotes, padding, a flag for each value, a nameless last column', () => {
  test('a value flagged below detection is its limit and suspect; a flag nobody spoke of is suspect', async () => {
    const file = excerpt('estuary-flags.csv');
    const seen = await look(file);
    expect(seen.draft.zone).toBeNull();
    expect(seen.draft.flags).toMatchObject({ '<0>': 'good', '<-4> [SBL] (CHB)': 'below', '<1> [GQS]': 'suspect' });
    const columns = said({ 8: ['phosphate', 'mg/L P'], 10: ['ammonium', 'mg/L N'] });
    const { '<1> [GQS]': _left, ...flags } = seen.draft.flags;
    const { outcome } = await takeIn(file, saying(seen, columns, { zone: '-06:00', flags }));
    expect(outcome).toMatchObject({ rows: 18, stored: 35, missing: 1, refused: 0 });
    const [first] = await readings('ammonium');
    expect(first).toMatchObject({ value: 0.002, quality: 1, reason: 'below-detection', flag: '<-4> [SBL] (CHB)' });
    // 01/14/2021 8:38 at six hours behind UTC.
    expect(when(first ?? { at: new Date(0) })).toBe('2021-01-14T14:38:00.000Z');
    const phosphate = await readings('phosphate');
    expect(phosphate[0]).toMatchObject({ value: 0.003, quality: 0, flag: '<0>' });
    expect(phosphate.find(({ flag }) => flag === '<1> [GQS]')).toMatchObject({ quality: 1, reason: 'flagged' });
  });
});

describe('two header lines, newest first, a word for missing, probes that drop out', () => {
  test('stands in order of time; three lone zeros are suspect and no oxygen', async () => {
    const file = excerpt('buoy-quality.txt');
    const seen = await look(file);
    expect(seen.draft).toMatchObject({
      delimiter: 'blanks',
      hasUnitsRow: true,
      missing: ['MM'],
      time: { as: 'parts', columns: [0, 1, 2, 3, 4] },
    });
    const columns = said({
      6: ['buoy-water', '°C'],
      9: ['buoy-saturation', '%'],
      10: ['buoy-oxygen', 'mg/L'],
      13: ['buoy-ph', 'pH'],
    });
    const { outcome } = await takeIn(file, saying(seen, columns, { zone: 'UTC' }));
    const rows = 21;
    expect(outcome).toMatchObject({
      rows,
      missing: rows,
      stored: 3 * rows,
      refused: 0,
      order: { isNewestFirst: true, jumps: 0 },
    });
    const oxygen = await readings('buoy-oxygen');
    expect(oxygen.map(when)).toEqual([...oxygen.map(when)].sort());
    expect(oxygen.filter(({ value }) => value === 0).map(({ quality, reason }) => [quality, reason])).toEqual(
      Array.from({ length: 3 }, () => [1, 'probes-out']),
    );
    expect(oxygen.filter(({ value }) => value > 0).every(({ quality }) => quality === 0)).toBe(true);
    expect(await readings('buoy-water')).toEqual([]);
  });
});

describe('a list of objects with texts for numbers', () => {
  test('an empty text is no reading, and never 0', async () => {
    const file = excerpt('tide-temperature.txt');
    const seen = await look(file);
    expect(seen.draft).toMatchObject({ delimiter: 'objects', head: ['t', 'v', 'f'], zone: null });
    const { outcome } = await takeIn(file, saying(seen, said({ 1: ['tide-water', '°C'] }), { zone: 'UTC' }));
    expect(outcome).toMatchObject({ rows: 24, stored: 23, missing: 1, refused: 0 });
    const water = await readings('tide-water');
    expect(water.map(when)).not.toContain('2014-09-28T00:00:00.000Z');
    expect(water[0]).toMatchObject({ value: 30.1, quality: 0, flag: '0,0,0' });
  });
});

describe('Latin-1, semicolons, comma decimals, a zone above the header, days without a time', () => {
  test('asks what 00:00 and 0 mean, and stores by what was said', async () => {
    const file = excerpt('lake-samples.csv');
    const seen = await look(file);
    expect(seen.draft).toMatchObject({
      encoding: 'windows-1252',
      delimiter: ';',
      decimal: ',',
      zone: '+01:00',
      midnight: null,
    });
    expect(seen.columns[4]?.name).toBe('O2-gelöst [mg/l] (0.0 m Tiefe)');
    const columns = said({
      4: ['surface-oxygen', 'mg/L'],
      5: ['surface-ammonium', 'mg/L N', 'below'],
      7: ['surface-ph', 'pH'],
    });
    const open = {
      ...saying(seen, columns),
      columns: saying(seen, columns).columns.map((one) => ({ ...one, zero: null })),
    };
    const fields = (await look(file, { draft: open })).questions.map(({ field }) => field);
    expect(fields).toEqual(['midnight', 'columns.5.zero']);
    const { outcome } = await takeIn(file, saying(seen, columns, { midnight: 'unknown' }));
    expect(outcome).toMatchObject({ rows: 23, refused: 0 });
    const oxygen = await readings('surface-oxygen');
    // 2017-11-07 13:10:00 at one hour before UTC; "9,7".
    expect(oxygen.at(-1)).toMatchObject({ value: 9.7, quality: 0, reason: null, at: new Date('2017-11-07T12:10:00Z') });
    expect(oxygen[0]).toMatchObject({ quality: 1, reason: 'time-unknown' });
    const ammonium = await readings('surface-ammonium');
    expect(ammonium.at(-1)).toMatchObject({ value: 0, quality: 1, reason: 'below-detection' });
  });
});
