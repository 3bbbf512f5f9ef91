import { difference } from '#core/facility/difference';
import type { Facility } from '#core/facility/facility';
import { readFacility } from '#shape/facility/read-facility';
import { writeFacility } from '#shape/facility/write-facility';
import { exportFacility } from '#server/facility/export-facility';
import { importFacility } from '#server/facility/import-facility';
import { previewImport } from '#server/facility/preview-import';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { beforeEach, describe, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import { heater } from '../../_support/build-equipment';
import { facility, site } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { stored } from '../../_support/stored';
import { withEquipment } from '../../_support/with-part';

const { query } = freshDatabase();
const TABLES = ['site', 'system', 'equipment', 'plan_version', 'person_name', 'record', 'record_head', 'review_run'];

const import_ = (given: Facility, basedOn?: number) =>
  importFacility(LOCAL_PERSON, { text: writeFacility(given), basedOn });
const preview = (given: Facility) => previewImport(LOCAL_PERSON, { text: writeFacility(given) });
const named = (name: string) => facility({ site: site({ name }) });

async function counts(): Promise<Record<string, number>> {
  const { rows } =
    await query(`SELECT ${TABLES.map((name) => `(SELECT count(*)::int FROM ${name}) AS ${name}`).join(', ')},
    (SELECT count(*)::int FROM graphile_worker._private_jobs) AS jobs`);
  return rows[0];
}

beforeEach(async () => {
  await query(`SET session_replication_role = replica; DELETE FROM site; DELETE FROM record; DELETE FROM record_head;
    DELETE FROM person_name; DELETE FROM plan_version; DELETE FROM review_run; DELETE FROM system; DELETE FROM equipment;
    DELETE FROM graphile_worker._private_jobs`);
});

describe('an import', () => {
  test('stores a new site, enters itself, every plan and every test into the record, and calls for reviews', async () => {
    expect(await import_(facility())).toEqual({
      ok: true,
      value: { site: { key: 'harbour', name: 'Harbour Aquarium' }, isNew: true, systems: 1, changes: 0, revision: 1 },
    });
    const { siteId } = await stored('harbour');
    const { rows } = await query('SELECT kind, count(*)::int FROM record GROUP BY kind ORDER BY kind');
    expect(rows).toEqual([
      { kind: 'facility-imported', count: 1 },
      { kind: 'plan-in-force', count: 7 },
      { kind: 'safeguard-tested', count: 10 },
    ]);
    expect(await verifyChain(siteId)).toEqual({ isWhole: true, links: 18 });
    const { rows: jobs } = await query('SELECT task_identifier AS task, key FROM graphile_worker.jobs');
    expect(jobs).toEqual([{ task: 'review-site', key: `review-site:${siteId}` }]);
    expect(await query('SELECT state FROM review_run')).toMatchObject({ rows: [{ state: 'waiting' }] });
  });

  test('of what is stored already changes nothing at all', async () => {
    await import_(facility());
    const before = await counts();
    expect(await import_(facility())).toMatchObject({ ok: true, value: { changes: 0, revision: 1, isNew: false } });
    expect(await counts()).toEqual(before);
  });

  test('of a changed file makes the site be as the file says, and counts the revision up', async () => {
    await import_(facility());
    const changed = withEquipment(heater({ ratedW: 300 }));
    expect(await import_(changed)).toMatchObject({ ok: true, value: { changes: 1, revision: 2, isNew: false } });
    expect((await stored('harbour')).facility).toEqual(changed);
  });

  test('that takes a safeguard out of service or puts it back says so in the record, by ids alone', async () => {
    await import_(facility());
    const [first, ...rest] = facility().systems[0]?.safeguards ?? [];
    const off = { by: 'Robin Example', why: 'new probe', since: '2026-01-02', until: '2026-01-09' };
    if (!first) throw new Error('no safeguard');
    const [one] = facility().systems;
    if (!one) throw new Error('no system');
    await import_(facility({ systems: [{ ...one, safeguards: [{ ...first, off }, ...rest] }] }));
    await import_(facility());
    const { rows } = await query(
      `SELECT kind, body FROM record WHERE kind LIKE 'safeguard-_%' AND kind <> 'safeguard-tested' ORDER BY seq`,
    );
    const { rows: names } = await query(`SELECT id FROM person_name WHERE name = 'Robin Example'`);
    const { by: _, ...said } = off;
    expect(rows).toMatchObject([
      { kind: 'safeguard-off', body: { by: 'local', owner: names[0].id, ...said } },
      { kind: 'safeguard-back', body: { by: 'local', since: off.since, until: off.until } },
    ]);
    expect(JSON.stringify(rows)).not.toContain('Robin');
  });

  test('of a test that lies ahead is refused at its place: it would count by itself when its day comes', async () => {
    const [one] = facility().systems;
    const [first, ...rest] = one?.safeguards ?? [];
    if (!(one && first)) throw new Error('no safeguard');
    const tests = [{ on: '2999-01-01', result: 'worked' as const }];
    const ahead = facility({ systems: [{ ...one, safeguards: [{ ...first, tests }, ...rest] }] });
    const fault = {
      path: 'systems[0].safeguards[0].tests[0].on',
      message: expect.stringMatching(/^must not be after today/),
      line: expect.any(Number),
    };
    expect(await import_(ahead)).toMatchObject({ ok: false, reason: { why: 'invalid', faults: [fault] } });
    expect(await preview(ahead)).toMatchObject({ ok: false, reason: { why: 'invalid', faults: [fault] } });
  });

  test('of a file with one fault anywhere stores nothing, and names it with its line', async () => {
    const before = await counts();
    const text = writeFacility(facility()).replace('"room": "gallery"', '"room": "galery"');
    const refusal = await importFacility(LOCAL_PERSON, { text });
    const line = text.split('\n').findIndex((words) => words.includes('galery')) + 1;
    expect(refusal).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'systems[0].room', line }] },
    });
    expect(await counts()).toEqual(before);
  });

  test('that breaks half-way leaves nothing of itself', async () => {
    const before = await counts();
    await query(`ALTER TABLE record ADD CONSTRAINT refuse CHECK (kind <> 'safeguard-tested')`);
    await expect(import_(facility())).rejects.toThrow();
    await query('ALTER TABLE record DROP CONSTRAINT refuse');
    expect(await counts()).toEqual(before);
  });

  test.each(['a\0b', 'a\ud800b'])('names a character that no database keeps, with its place', async (means) => {
    const given = facility({ site: site({ powerCut: { means, repairMin: { value: 30, origin: 'entered' } } }) });
    expect(await import_(given)).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'site.powerCut.means', line: expect.any(Number) }] },
    });
  });

  test('is refused when the site was changed after the person looked', async () => {
    await import_(facility());
    const looked = await preview(named('One'));
    expect(looked).toMatchObject({ ok: true, value: { basedOn: 1 } });
    await import_(named('Two'), 1);
    expect(await import_(named('One'), 1)).toMatchObject({ ok: false, reason: { why: 'conflict' } });
    expect((await stored('harbour')).facility.site.name).toBe('Two');
  });

  test('is not allowed to somebody whose role at the site is too low, and tells them nothing of it', async () => {
    const aquarist: Who = { id: 'x', name: 'X', everywhere: null, at: { harbour: 'aquarist' } };
    const text = writeFacility(facility());
    expect(await importFacility(aquarist, { text })).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await previewImport(aquarist, { text })).toEqual({ ok: false, reason: { why: 'not-allowed' } });
  });
});

describe('two imports of one site at once', () => {
  test('run one after the other, whether the site is new or not: one chain, and the whole of the later one', async () => {
    for (const round of [0, 1]) {
      const names = [`A${round}`, `B${round}`, `C${round}`];
      const done = await Promise.all(names.map((name) => import_(named(name))));
      const revisions = done.map((one) => (one.ok ? one.value.revision : null));
      expect([...revisions].sort()).toEqual([1, 2, 3].map((n) => n + 3 * round));
      const { facility: left, siteId, revision } = await stored('harbour');
      expect(left).toEqual(named(names[revisions.indexOf(revision)] ?? ''));
      expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
    }
  });

  test('that looked at the same state are not both kept', async () => {
    await import_(facility());
    const done = await Promise.all(['A', 'B'].map((name) => import_(named(name), 1)));
    expect(done.map(({ ok }) => ok).sort()).toEqual([false, true]);
  });
});

describe('a dry run', () => {
  test('stores nothing, and says what is new', async () => {
    const before = await counts();
    expect(await preview(facility())).toMatchObject({ ok: true, value: { isNew: true, basedOn: 0, groups: [] } });
    expect(await counts()).toEqual(before);
  });

  test('says what would change, by system and in words', async () => {
    await import_(facility());
    const changed = withEquipment(heater({ ratedW: 300 }));
    const said = await preview({ ...changed, site: site({ name: 'Harbour' }) });
    expect(
      said.ok && said.value.groups.map(({ system, name, changes }) => [system, name, changes.map((c) => c.words)]),
    ).toEqual([
      [null, 'The site', ['name: Harbour Aquarium → Harbour']],
      ['reef-1', 'Reef 1', ['Heater 1 (equipment), rated: 150 W → 300 W']],
    ]);
  });
});

describe('an export', () => {
  test.each(['json', 'yaml'] as const)('as %s, imported again, makes no difference', async (format) => {
    await import_(facility());
    const file = await exportFacility(LOCAL_PERSON, { site: 'harbour', format });
    const text = file.ok ? file.value.text : '';
    const read = readFacility(text, { format });
    expect(read.ok && difference(read.value, facility())).toEqual([]);
    expect(await previewImport(LOCAL_PERSON, { text, format })).toMatchObject({ ok: true, value: { groups: [] } });
    expect(await importFacility(LOCAL_PERSON, { text })).toMatchObject({ ok: true, value: { revision: 1 } });
  });

  test('of a site that is not there, or that one may not see, is not found', async () => {
    await import_(facility());
    const notFound = { ok: false, reason: { why: 'not-found', what: 'site' } };
    expect(await exportFacility(LOCAL_PERSON, { site: 'elsewhere', format: 'json' })).toEqual(notFound);
    const stranger: Who = { id: 'x', name: 'X', everywhere: null, at: {} };
    expect(await exportFacility(stranger, { site: 'harbour', format: 'json' })).toEqual(notFound);
  });
});
