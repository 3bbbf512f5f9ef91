import { beforeAll, describe, expect, test } from 'vitest';
import { LOCAL_PERSON } from '#server/gate/who';
import { lookAtFile } from '#server/readings/file/look-at-file';
import { takeInFile } from '#server/readings/file/take-in-file';
import { freshDatabase } from '../../_support/database';
import { fileOf, look, saying, siteWithSensors, takeIn } from '../../_support/logger-files';

const { query } = freshDatabase();
let at = '';
beforeAll(async () => {
  at = await siteWithSensors({ probe: 'temperature', other: 'temperature', oxygen: 'oxygen' });
});

const HEAD = 'Time,Probe (°C),O2 (mg/l)';
/** A table of rows: date, clock, two cells. */
const table = (...rows: string[]) => [HEAD, ...rows].join('\n');
const plain = (from: number, count: number, value = 24) =>
  Array.from({ length: count }, (_, i) => `2026-05-${String(from + i).padStart(2, '0')} 13:00,${value + i / 10},7.5`);
const columns = () => ({ 1: [`${at}/probe`, '°C'], 2: [`${at}/oxygen`, 'mg/L'] }) as const;
const draftOf = async (text: string) => saying(await look(fileOf(text)), columns(), { zone: 'UTC' });

describe('a file that comes again', () => {
  test('adds nothing twice; a longer one later adds what is new, and another value for an instant stays out', async () => {
    const first = table(...plain(1, 10));
    const draft = await draftOf(first);
    expect((await takeIn(fileOf(first), draft, 'deck')).outcome).toMatchObject({
      stored: 20,
      repeats: 0,
      conflicts: 0,
    });
    expect((await takeIn(fileOf(first), draft, 'deck')).outcome).toMatchObject({
      stored: 0,
      repeats: 20,
      conflicts: 0,
    });
    const longer = table(...plain(1, 9), '2026-05-10 13:00,31.5,7.5', '2026-05-11 13:00,25,7.5');
    const { outcome } = await takeIn(fileOf(longer), draft, 'deck');
    expect(outcome).toMatchObject({ stored: 2, repeats: 19, conflicts: 1 });
    expect(outcome.firstConflicts).toMatchObject([{ line: 11, at: '2026-05-10T13:00:00.000Z', value: 31.5 }]);
    const { rows } = await query(`SELECT value FROM reading WHERE "at" = '2026-05-10 13:00Z' AND value > 20`);
    expect(rows.map(({ value }) => value)).toEqual([24.9]);
  });

  test('is looked at by what was said of it, which is remembered by its name', async () => {
    const seen = await look(fileOf(table(...plain(20, 5))));
    expect(seen.from?.name).toBe('deck');
    expect(seen.questions).toEqual([]);
    expect(seen.draft.zone).toBe('UTC');
    expect(seen.preview?.[0]).toMatchObject({
      line: 2,
      at: '2026-05-20T13:00:00.000Z',
      values: [{ value: 24 }, { value: 7.5 }],
    });
    expect(seen.before).toBeNull();
    expect((await look(fileOf(table(...plain(1, 10))))).before).not.toBeNull();
  });

  test('said otherwise under the same name is remembered so from then on, and what was imported keeps its own', async () => {
    const text = table(...plain(25, 3));
    const draft = { ...(await draftOf(text)), missing: ['-999'] };
    await takeIn(fileOf(text), draft, 'deck');
    expect((await look(fileOf(text))).draft.missing).toEqual(['-999']);
    const { rows } = await query(
      'SELECT count(DISTINCT layout_id)::int AS layouts, count(*)::int AS imports FROM file_import',
    );
    expect(rows).toEqual([{ layouts: 2, imports: 4 }]);
  });
});

describe('what a file holds that cannot be stored', () => {
  test('is told by its line, and the rest is stored', async () => {
    const text = table(
      '2026-06-01 13:00,24,7.5',
      '2026-06-02 13:00,warm,7.5',
      'yesterday,24,7.5',
      '2026-06-03 13:00,,',
      '2190-01-01 13:00,24,7.5',
      '1950-01-01 13:00,24,7.5',
      '2026-06-04 13:00,1e999,7.5',
      '2026-06-05 13:00,85,7.5',
      ...plain(1, 3).map((row) => row.replace('-05-', '-07-')),
    );
    const { outcome } = await takeIn(fileOf(text), await draftOf(text), 'odd');
    expect(outcome.firstRefused.map(({ line, says }) => [line, says])).toEqual([
      [3, '“warm” is no number'],
      [4, '“yesterday” is no time'],
      [6, '2190-01-01 13:00 lies ahead'],
      [7, '1950-01-01 13:00 lies before 1990, from which on readings are kept'],
      [8, '“1e999” is no number'],
    ]);
    expect(outcome).toMatchObject({ refused: 5, missing: 2, stored: 14 - 2 });
    const { rows } = await query(`SELECT quality, reason FROM reading WHERE "at" = '2026-06-05 13:00Z' AND value = 85`);
    expect(rows).toEqual([{ quality: 2, reason: 'power-on' }]);
  });

  test.each([
    ['nothing but words', 'no rows with a time'],
    ['a,b\n1,2\n3,4\n5,6\n', 'no rows with a time'],
    ['{"data": [', 'no JSON'],
    ['{"data": 5}', 'no list of objects'],
    [`${HEAD}\n2026-05-01 13:00,"24,7.5\n${plain(2, 2).join('\n')}`, 'a quote'],
  ])('%j as a whole is refused: %s', async (text, says) => {
    const seen = await lookAtFile(LOCAL_PERSON, { site: 'harbour', file: fileOf(text) });
    expect(seen).toMatchObject({ ok: false, reason: { why: 'invalid' } });
    expect(JSON.stringify(seen)).toContain(says);
  });

  test('bytes that are no letters are refused', async () => {
    const file = { name: 'picture.png', bytes: new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13, 0x49, 0x48]) };
    const seen = await lookAtFile(LOCAL_PERSON, { site: 'harbour', file });
    expect(JSON.stringify(seen)).toContain('no letters');
  });
});

describe('what has to be said', () => {
  test('is asked for by its field, and nothing is stored before', async () => {
    const text = ['Date;Value', ...Array.from({ length: 9 }, (_, i) => `0${i + 1}.03.2026 13:00;${i % 2}`)].join('\n');
    const seen = await look(fileOf(text));
    const draft = saying(seen, { 1: [`${at}/oxygen`, ''] });
    const open = { ...draft, columns: draft.columns.map((one) => ({ ...one, zero: null })) };
    const taken = await takeInFile(LOCAL_PERSON, { site: 'harbour', file: fileOf(text), draft: open, name: 'x' });
    expect(taken).toMatchObject({
      ok: false,
      reason: {
        why: 'invalid',
        faults: [{ path: 'time.order' }, { path: 'zone' }, { path: 'columns.1.unit' }, { path: 'columns.1.zero' }],
      },
    });
  });

  test('of a sensor that is described no longer, another has to be chosen', async () => {
    const text = table(...plain(1, 4));
    const draft = saying(
      await look(fileOf(text)),
      { 1: ['00000000-0000-7000-8000-000000000000', '°C'] },
      { zone: 'UTC' },
    );
    const taken = await takeInFile(LOCAL_PERSON, { site: 'harbour', file: fileOf(text), draft, name: 'x' });
    expect(taken).toMatchObject({ ok: false, reason: { faults: [{ path: 'columns.1.sensor' }] } });
  });
});

test('by clocks that change, what is leapt over or shown twice is told, and both passes are stored', async () => {
  // Clocks of the site, in London: back on 2025-10-26 at 02:00, forward on 2026-03-29 at 01:00 (IANA time zone database).
  const times = [
    '2025-10-26 00:30',
    '2025-10-26 01:00',
    '2025-10-26 01:30',
    '2025-10-26 01:00',
    '2025-10-26 01:30',
    '2025-10-26 02:00',
    '2026-03-29 00:45',
    '2026-03-29 01:15',
    '2026-03-29 02:30',
  ];
  const text = table(...times.map((time, i) => `${time},2${i},7.5`));
  const draft = saying(await look(fileOf(text)), { 1: [`${at}/other`, '°C'] }, { zone: 'Europe/London' });
  const { outcome } = await takeIn(fileOf(text), draft, 'clocks');
  expect(outcome).toMatchObject({ stored: 9, conflicts: 0, order: { repeated: 4, second: 2, skipped: 1, jumps: 0 } });
  const { rows } = await query(
    `SELECT r.at, r.value FROM reading r JOIN sensor s ON s.id = r.sensor_id WHERE s.key = 'other' ORDER BY r.at`,
  );
  expect(rows.slice(1, 5).map(({ at: instant, value }) => [instant.toISOString().slice(11, 16), value])).toEqual([
    ['00:00', 21],
    ['00:30', 22],
    ['01:00', 23],
    ['01:30', 24],
  ]);
});

test('what was taken in stands in the record with its sum and its counts, and the readings name it', async () => {
  const { rows } = await query(
    `SELECT i.file_name, i.outcome->>'stored' AS stored, encode(i.sha256, 'hex') AS sha, r.body
       FROM file_import i JOIN record r ON r.body->>'import' = i.id::text
      WHERE r.kind = 'file-taken-in' ORDER BY r.seq LIMIT 1`,
  );
  expect(rows).toMatchObject([
    { file_name: 'log.csv', stored: '20', body: { stored: 20, file: 'log.csv', sha256: rows[0]?.sha } },
  ]);
  const named = await query(
    'SELECT count(*)::int AS count FROM reading WHERE origin = 2 AND came_by IN (SELECT id FROM file_import)',
  );
  const all = await query('SELECT count(*)::int AS count FROM reading');
  expect(named.rows).toEqual(all.rows);
});
