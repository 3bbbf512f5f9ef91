import { inTransaction } from '#data/transaction';
import { appendRecords } from '#data/records/append-records';
import { exportRecord } from '#server/record/export-record';
import { entryWords, kindTitle } from '#server/record/entry-words';
import { readRecord, readRecordShape } from '#server/record/read-record';
import { verifyRecord } from '#server/record/verify-record';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { beforeAll, describe, expect, test } from 'vitest';
import { copyIn } from '../../_support/copy-in';
import { countQueries } from '../../_support/count-queries';
import { freshDatabase } from '../../_support/database';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';
import { site } from '../../_support/build-facility';

const { query } = freshDatabase();

const ANNA = '019a0000-0000-7000-8000-00000000000a';
const GONE = '019a0000-0000-7000-8000-00000000000b';
const facility = smallFacility();
const aquarist: Who = { id: ANNA, name: 'Anna', everywhere: null, at: { harbour: 'aquarist' } };
let siteId = '';

beforeAll(async () => {
  await keep(facility);
  await keep({ ...facility, site: site({ key: 'branch', name: 'Branch' }) });
  siteId = (await stored('harbour')).siteId;
  await query(
    `INSERT INTO account (id, email, name, created_at) VALUES ('${ANNA}', 'anna@aqua.example', 'Anna', now()), ('${GONE}', NULL, NULL, now())`,
  );
  const entry = (n: number) => ({ kind: 'walked-past', body: { by: n % 2 ? ANNA : GONE, note: `=1+${n}` } });
  const entries = Array.from({ length: 60 }, (_, n) => entry(n));
  await inTransaction((tx) => appendRecords(tx, siteId, entries, new Date('2026-03-29T00:59:59Z')));
});

const read = async (who: Who, asked: Record<string, unknown> = {}) =>
  await readRecord(who, readRecordShape.parse({ site: 'harbour', ...asked }));
const page = async (asked: Record<string, unknown> = {}) => {
  const answer = await read(aquarist, asked);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer.value;
};

describe('the record of a site', () => {
  test('is told newest first, a page at a time, to its first entry', async () => {
    const newest = await page();
    const all = newest.head?.seq ?? 0;
    expect(newest.entries[0]).toMatchObject({ seq: all, by: 'Anna', byId: ANNA, at: '2026-03-29T00:59:59.000Z' });
    expect(newest.entries).toHaveLength(50);
    expect(newest.olderBefore).toBe(all - 49);
    const older = await page({ before: String(newest.olderBefore) });
    expect(older.entries.map(({ seq }) => seq)).toEqual(Array.from({ length: all - 50 }, (_, n) => all - 50 - n));
    expect(older.olderBefore).toBeNull();
    expect(older.entries.at(-1)).toMatchObject({
      what: 'Began the description of the site',
      by: 'the machine itself',
    });
  });

  test('says of a plan which equipment it is of, and of somebody erased that the name is erased', async () => {
    const plans = await page({ kind: 'plan-in-force' });
    expect(plans.entries.map(({ what }) => what)).toContain('Put version 1 of the plan of Heater 1 in force');
    expect((await page({ by: GONE })).entries[0]?.by).toBe('name erased');
  });

  test('is narrowed down by kind and person, with the choices that lead somewhere', async () => {
    const anna = await page({ by: ANNA, kind: 'walked-past' });
    expect(anna.entries).toHaveLength(30);
    expect(new Set(anna.entries.map(({ byId }) => byId))).toEqual(new Set([ANNA]));
    expect((await page({ by: ANNA, kind: 'plan-in-force' })).entries).toEqual([]);
    expect(anna.people.map(({ name }) => name)).toEqual(['Anna', 'name erased', 'the machine itself']);
    expect(anna.kinds.map(({ value }) => value)).toEqual([
      'facility-imported',
      'plan-in-force',
      'safeguard-tested',
      'walked-past',
    ]);
    expect((await page({ by: '', kind: '', before: '', times: '' })).entries).toHaveLength(50);
  });

  test('asks at most eight questions of the database, however many entries there are', async () => {
    expect((await countQueries(() => read(aquarist))).length).toBeLessThanOrEqual(8);
    expect((await countQueries(() => read(aquarist, { kind: 'plan-in-force' }))).length).toBeLessThanOrEqual(8);
  });

  test('is not for a viewer, and not there for somebody of another site', async () => {
    expect(await read({ ...aquarist, at: { harbour: 'viewer' } })).toEqual({
      ok: false,
      reason: { why: 'not-allowed' },
    });
    const foreign = await read({ ...aquarist, at: { branch: 'admin' } });
    expect(foreign).toEqual({ ok: false, reason: { why: 'not-found', what: 'site' } });
    expect(await readRecord(LOCAL_PERSON, { site: 'nowhere' })).toEqual(foreign);
  });
});

describe('the record as CSV', () => {
  test('holds every entry with its seal, and no text that a spreadsheet would run', async () => {
    const file = await exportRecord(aquarist, { site: 'harbour' });
    if (!file.ok) throw new Error('no file');
    const lines = file.value.text.trimEnd().split('\r\n');
    expect(lines).toHaveLength(1 + ((await page()).head?.seq ?? 0));
    expect(lines[1]).toMatch(/^\d+,2026-03-29T00:59:59.000Z,2026-03-29 00:59:59,Anna,/);
    expect(lines[1]).toContain((await page()).head?.seal);
    expect(file.value.text).not.toMatch(/(^|,)"?[=+@-](?!\d)/m);
  });

  // PostgreSQL's own reader of CSV is the other side.
  test('is read back by PostgreSQL as it was written', async () => {
    const file = await exportRecord(aquarist, { site: 'harbour', kind: 'walked-past' });
    if (!file.ok) throw new Error('no file');
    const rows = await copyIn(file.value.text);
    expect(rows).toHaveLength(60);
    expect(JSON.parse(rows[0]?.[7] ?? '')).toEqual({ by: ANNA, note: '=1+59' });
  });
});

describe('the chain', () => {
  test('is worked out for those who may, when asked', async () => {
    expect(await verifyRecord(LOCAL_PERSON, { site: 'harbour' })).toMatchObject({ ok: true, value: { isWhole: true } });
    expect(await verifyRecord(aquarist, { site: 'harbour' })).toEqual({ ok: false, reason: { why: 'not-allowed' } });
  });
});

test('an entry of a kind without words of its own is told by its kind and what stands in it', () => {
  const names = new Map([[ANNA, 'Anna']]);
  expect(entryWords('pump-swapped', { by: ANNA, with: ANNA, n: 2, gone: null }, names)).toBe(
    'Pump swapped: with Anna, n 2, gone –',
  );
  expect(entryWords('pump-swapped', { by: ANNA }, names)).toBe('Pump swapped');
  expect(entryWords('constructor', { by: ANNA }, names)).toBe('Constructor');
  expect(kindTitle('constructor')).toBe('constructor');
});
