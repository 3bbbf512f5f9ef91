import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import { keepChange } from '#server/describe/keep-change';
import { previewChange } from '#server/describe/preview-change';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { entryWords } from '#server/record/entry-words';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { edit, keepEdit, type Meant } from '../../_support/edit-thing';
import { keep, stored } from '../../_support/stored';
import { system as baseSystem } from '../../_support/build-system';

const { query } = freshDatabase();
const SYSTEM = baseSystem().key;
const HEATER: Meant = { noun: 'equipment', system: SYSTEM, key: 'heater-1' };
const entered = (value: string) => ({ value, from: 'entered' });

async function anew(): Promise<void> {
  await query(`SET session_replication_role = replica; DO $$ DECLARE name text; BEGIN
    FOR name IN SELECT c.table_name FROM information_schema.columns c JOIN information_schema.tables t USING (table_schema, table_name)
      WHERE t.table_schema = 'public' AND t.table_type = 'BASE TABLE' AND c.column_name = 'site_id'
    LOOP EXECUTE format('DELETE FROM %I', name); END LOOP; DELETE FROM site; END $$`);
  await keep(facility());
}

async function ofRecord(kind: string): Promise<Record<string, unknown>[]> {
  const { rows } = await query('SELECT body FROM record WHERE kind = $1 ORDER BY seq', [kind]);
  return rows.map(({ body }) => body);
}

async function rowsOf(table: string, key: string): Promise<{ id: string; isLiving: boolean; system: string | null }[]> {
  const { rows } = await query(
    `SELECT t.id, t.retired_at IS NULL AS "isLiving", s.key AS system FROM ${table} t
       LEFT JOIN system s ON s.id = t.system_id WHERE t.key = $1 ORDER BY t.id`,
    [key],
  );
  return rows;
}

describe('a change of the description', () => {
  beforeEach(anew);

  test('is told before it is kept; kept, it stands in the facility and in the record, and calls for reviews', async () => {
    const request = await edit(HEATER, 'change', { ratedW: entered('450') });
    const seen = await previewChange(LOCAL_PERSON, request);
    if (!seen.ok) throw new Error(JSON.stringify(seen.reason));
    const words = seen.value.groups.flatMap(({ changes }) => changes.map((one) => one.words));
    expect(words).toEqual([expect.stringMatching(/^Heater 1 \(equipment\), rated: .* → 450 W$/)]);
    expect(seen.value.touched).toBe(1);
    await query('DELETE FROM graphile_worker._private_jobs');
    const kept = await keepChange(LOCAL_PERSON, { ...request, basedOn: seen.value.basedOn });
    expect(kept).toMatchObject({ ok: true, value: { changes: 1, revision: 2 } });
    const { facility: now, siteId } = await stored('harbour');
    const heater = now.systems[0]?.equipment.find(({ key }) => key === 'heater-1');
    expect(heater?.ratedW).toEqual({ value: 450, origin: 'entered' });
    const [row] = await rowsOf('equipment', 'heater-1');
    expect(await ofRecord('description-changed')).toEqual([
      expect.objectContaining({ by: 'local', act: 'change', thing: row?.id, revision: 2, changes: words }),
    ]);
    expect(await verifyChain(siteId)).toMatchObject({ isWhole: true });
    const { rows: jobs } = await query('SELECT key FROM graphile_worker.jobs');
    expect(jobs).toEqual([{ key: `review-site:${siteId}` }]);
  });

  test('is told in the units of the person, and stands in the record in those of the files', async () => {
    const tank = await edit(
      { noun: 'tank', system: SYSTEM, key: 'display' },
      'change',
      { volumeL: entered('70') },
      'us',
    );
    const seen = await previewChange(LOCAL_PERSON, tank);
    if (!seen.ok) throw new Error(JSON.stringify(seen.reason));
    expect(seen.value.groups.flatMap(({ changes }) => changes.map((one) => one.words))).toEqual([
      expect.stringMatching(/ US gal.* → 70 US gal$/),
    ]);
    expect(await keepEdit(tank)).toMatchObject({ ok: true });
    // The US gallon is 231 cubic inches (NIST Handbook 44, appendix C), so 3.785411784 L.
    expect((await ofRecord('description-changed')).at(-1)?.changes).toEqual([expect.stringMatching(/ → 264.979 L$/)]);
  });

  test('of nothing changes nothing: no revision, no entry', async () => {
    expect(await keepEdit(await edit(HEATER, 'change', {}, 'us'))).toMatchObject({
      ok: true,
      value: { changes: 0, revision: 1 },
    });
    expect(await ofRecord('description-changed')).toEqual([]);
    expect((await stored('harbour')).facility).toEqual(facility());
  });

  test('names every fault by its field of the form, and keeps nothing', async () => {
    const typed = { name: '', ratedW: entered('much'), wattsRange: { minW: '300', maxW: '20' } };
    const seen = await previewChange(LOCAL_PERSON, await edit(HEATER, 'change', typed));
    expect(seen).toMatchObject({ ok: false, reason: { why: 'invalid' } });
    const faults = !seen.ok && seen.reason.why === 'invalid' ? seen.reason.faults : [];
    expect(faults.map(({ path }) => path)).toEqual(['name', 'ratedW']);
    expect(faults[1]?.message).toMatch(/^must be a number \(W\).* found "much"$/);
    const range = await previewChange(LOCAL_PERSON, await edit(HEATER, 'change', { wattsRange: typed.wattsRange }));
    expect(range).toMatchObject({ ok: false, reason: { faults: [{ path: 'wattsRange' }] } });
  });

  test('that another was quicker than is refused, and looked at again leaves what the other changed', async () => {
    const mine = await edit(HEATER, 'change', { ratedW: entered('450') });
    const seen = await previewChange(LOCAL_PERSON, mine);
    const basedOn = seen.ok ? seen.value.basedOn : 0;
    await keepEdit(await edit(HEATER, 'change', { repairMin: entered('55') }));
    expect(await keepChange(LOCAL_PERSON, { ...mine, basedOn })).toMatchObject({
      ok: false,
      reason: { why: 'conflict' },
    });
    expect(await keepEdit(mine)).toMatchObject({ ok: true, value: { changes: 1 } });
    const heater = (await stored('harbour')).facility.systems[0]?.equipment.find(({ key }) => key === 'heater-1');
    expect(heater).toMatchObject({ ratedW: { value: 450 }, repairMin: { value: 55 } });
  });

  test('says so when it would undo what another has changed meanwhile', async () => {
    const mine = await edit(HEATER, 'change', { ratedW: entered('450') });
    await keepEdit(await edit(HEATER, 'change', { ratedW: entered('400') }));
    expect(await previewChange(LOCAL_PERSON, mine)).toMatchObject({ ok: true, value: { clashes: ['Rated power'] } });
  });

  test('never touches the plan of equipment, whatever is sent', async () => {
    const request = await edit(HEATER, 'change', { plan: { regulation: { kind: 'always', by: 'person' } } });
    expect(await keepEdit(request)).toMatchObject({ ok: true, value: { changes: 0 } });
  });

  test('of a person of the rota stands in the record without name and key', async () => {
    await keepEdit(
      await edit({ noun: 'person', key: 'robin' }, 'change', { name: 'Robin Rowe', travelMin: entered('40') }),
    );
    await keepEdit(await edit({ noun: 'shift', key: 'day' }, 'change', { people: ['sam', 'robin'] }));
    const entries = await ofRecord('description-changed');
    expect(entries.length).toBeGreaterThan(0);
    expect(JSON.stringify(entries)).not.toMatch(/robin|rowe|sam/i);
  });
});

describe('who may change a description', () => {
  beforeAll(anew);

  const as = (at: Who['at']): Who => ({ id: 'someone', name: 'Someone', everywhere: null, at });

  test.each([
    ['nobody of the site', {}, 'not-found'],
    ['a viewer', { harbour: 'viewer' }, 'not-allowed'],
    ['an aquarist', { harbour: 'aquarist' }, 'not-allowed'],
    ['the lead of another site', { other: 'lead' }, 'not-found'],
  ] as const)('%s may not', async (_who, at, why) => {
    const request = await edit(HEATER, 'change', { ratedW: entered('450') });
    expect(await previewChange(as(at), request)).toMatchObject({ ok: false, reason: { why } });
    expect(await keepChange(as(at), { ...request, basedOn: 1 })).toMatchObject({ ok: false, reason: { why } });
  });

  test('a lead may', async () => {
    const request = await edit(HEATER, 'change', { ratedW: entered('450') });
    expect(await keepEdit(request, as({ harbour: 'lead' }))).toMatchObject({ ok: true });
  });
});

describe('what is not done to things of a kind', () => {
  test.each([
    ['replace', 'safeguard', SYSTEM, baseSystem().safeguards[0]?.key],
    ['move', 'safeguard', SYSTEM, baseSystem().safeguards[0]?.key],
    ['replace', 'system', undefined, SYSTEM],
    ['retire', 'site', undefined, 'harbour'],
    ['add', 'system', undefined, undefined],
  ] as const)('to %s a %s is refused, though a request may ask for it', async (act, noun, system, key) => {
    await anew();
    const draft = { why: 'because', on: '2026-01-02' };
    const asked = { site: 'harbour', act, noun, system, key, draft, shown: {}, units: 'metric', basedOn: 1 } as const;
    const { rows: before } = await query('SELECT count(*)::int AS n FROM safeguard_test');
    expect(await keepChange(LOCAL_PERSON, asked)).toEqual({ ok: false, reason: { why: 'not-found', what: 'thing' } });
    expect((await query('SELECT count(*)::int AS n FROM safeguard_test')).rows).toEqual(before);
  });
});

describe('a thing that is added', () => {
  beforeEach(anew);

  test('comes with its first plan, which is in force with it', async () => {
    const plan = {
      cutOuts: [],
      interlocks: [],
      states: [],
      regulation: { kind: 'always', by: 'controller' },
    };
    const typed = { name: 'Lamp', key: 'lamp', type: 'light', tank: baseSystem().tanks[0]?.key ?? '', plan };
    const kept = await keepEdit(await edit({ noun: 'equipment', system: SYSTEM }, 'add', typed));
    expect(kept).toMatchObject({ ok: true, value: { thing: { key: 'lamp' } } });
    const plans = await ofRecord('plan-in-force');
    const [row] = await rowsOf('equipment', 'lamp');
    expect(plans.at(-1)).toMatchObject({ equipment: row?.id, version: 1 });
  });

  test('in the place of what was retired a moment ago has its other plan on its author’s own word', async () => {
    const plan = { cutOuts: [], interlocks: [], states: [], regulation: { kind: 'always', by: 'controller' } };
    const lamp = { name: 'Lamp', key: 'lamp', type: 'light', tank: baseSystem().tanks[0]?.key ?? '', plan };
    await keepEdit(await edit({ noun: 'equipment', system: SYSTEM }, 'add', lamp));
    const away = { why: 'done with', on: '2026-01-02' };
    expect(
      await keepEdit(await edit({ noun: 'equipment', system: SYSTEM, key: 'lamp' }, 'retire', away)),
    ).toMatchObject({
      ok: true,
    });
    const other = { ...plan, ownWord: {}, regulation: { kind: 'always', by: 'person' } };
    await keepEdit(await edit({ noun: 'equipment', system: SYSTEM }, 'add', { ...lamp, plan: other }));
    const is = (await stored('harbour')).facility.systems[0]?.equipment.find(({ key }) => key === 'lamp');
    expect(is?.plan).toMatchObject({
      regulation: { by: 'person' },
      ownWord: { why: expect.stringMatching(/first plan/) },
    });
  });

  test('under a key that is taken is refused at the key', async () => {
    const typed = { name: 'Pumps', key: 'pumps' };
    const kept = await keepEdit(await edit({ noun: 'circuit' }, 'add', typed));
    expect(kept).toMatchObject({ ok: false, reason: { faults: [{ path: 'key' }] } });
  });
});

describe('a thing that is replaced', () => {
  beforeEach(anew);

  test('keeps its key and its plan; the one before is retired, and both stand in the history', async () => {
    const typed = { name: 'Heater 1, new', ratedW: entered('250'), why: 'Its seal leaked', on: '2026-03-01' };
    const request = await edit(HEATER, 'replace', typed);
    const seen = await previewChange(LOCAL_PERSON, request);
    expect(seen).toMatchObject({
      ok: true,
      value: { testAgain: ['Heater 1 high cut-out', 'Heaters off without return'] },
    });
    expect(await keepEdit(request)).toMatchObject({ ok: true });
    const rows = await rowsOf('equipment', 'heater-1');
    expect(rows.map(({ isLiving }) => isLiving)).toEqual([false, true]);
    const [old, young] = rows;
    expect((await ofRecord('description-changed')).at(-1)).toMatchObject({
      act: 'replace',
      thing: young?.id,
      former: old?.id,
      why: 'Its seal leaked',
      on: '2026-03-01',
    });
    const { rows: plans } = await query('SELECT version FROM plan_version WHERE equipment_id = $1', [young?.id]);
    expect(plans).toEqual([{ version: 1 }]);
    const was = facility().systems[0]?.equipment.find(({ key }) => key === 'heater-1');
    const is = (await stored('harbour')).facility.systems[0]?.equipment.find(({ key }) => key === 'heater-1');
    expect(is?.plan).toEqual(was?.plan);
    expect(is?.name).toBe('Heater 1, new');
  });

  test('by one of the same make is another thing all the same, and the record says so', async () => {
    const request = await edit(HEATER, 'replace', { why: 'Its seal leaked', on: '2026-03-01' });
    expect(await keepEdit(request)).toMatchObject({ ok: true, value: { changes: 0, revision: 2 } });
    const rows = await rowsOf('equipment', 'heater-1');
    expect(rows.map(({ isLiving }) => isLiving)).toEqual([false, true]);
    const [entry] = await ofRecord('description-changed');
    expect(entry).toMatchObject({ act: 'replace', thing: rows[1]?.id, former: rows[0]?.id });
    const names = new Map([[rows[1]?.id ?? '', 'Heater 1']]);
    expect(entryWords('description-changed', entry ?? {}, names)).toBe(
      'Replaced (piece of equipment): Heater 1. Why: Its seal leaked (2026-03-01)',
    );
  });

  test('without a reason, or on a day that is yet to come, is refused', async () => {
    const kept = await keepEdit(await edit(HEATER, 'replace', { why: ' ', on: '9999-01-01' }));
    expect(kept).toMatchObject({ ok: false, reason: { faults: [{ path: 'why' }, { path: 'on' }] } });
  });
});

describe('a thing that is moved', () => {
  beforeEach(anew);

  test('to another system stays the same thing', async () => {
    await keep(facility({ systems: [baseSystem(), baseSystem({ key: 'second', name: 'Second' })] }));
    const [first] = baseSystem().stock;
    const before = (await rowsOf('stock', first?.key ?? '')).find(({ system }) => system === SYSTEM);
    const meant: Meant = { noun: 'stock', system: SYSTEM, key: first?.key };
    const to = { system: 'second', tank: first?.tank ?? '', key: 'guests' };
    const reason = { why: 'Quarantine is over', on: '2026-03-01' };
    expect(await keepEdit(await edit(meant, 'move', { to: { ...to, key: '' }, ...reason }))).toMatchObject({
      ok: false,
      reason: { faults: [{ path: 'to.key' }] },
    });
    expect(await keepEdit(await edit(meant, 'move', { to, ...reason }))).toMatchObject({
      ok: true,
      value: { thing: { system: 'second', key: 'guests' } },
    });
    const { rows } = await query(
      'SELECT t.key, s.key AS system FROM stock t JOIN system s ON s.id = t.system_id WHERE t.id = $1',
      [before?.id],
    );
    expect(rows).toEqual([{ key: 'guests', system: 'second' }]);
  });
});

describe('a thing that is retired', () => {
  beforeEach(anew);

  const reason = { why: 'Sold', on: '2026-03-01' };

  test('is refused while something refers to it, and all of that is named', async () => {
    const kept = await keepEdit(await edit({ noun: 'circuit', key: 'pumps' }, 'retire', reason));
    const faults = !kept.ok && kept.reason.why === 'invalid' ? kept.reason.faults : [];
    const hanging = facility().systems[0]?.equipment.filter(({ circuit }) => circuit === 'pumps') ?? [];
    expect(hanging.length).toBeGreaterThan(0);
    for (const { name } of hanging) expect(faults.some(({ message }) => message.includes(name))).toBe(true);
  });

  test('is no longer described; its row, its plans and its entries stay', async () => {
    const blower: Meant = { noun: 'equipment', system: SYSTEM, key: 'skimmer' };
    expect(await keepEdit(await edit(blower, 'retire', { why: 'Sold' }))).toMatchObject({
      ok: true,
      value: { thing: null },
    });
    const rows = await rowsOf('equipment', 'skimmer');
    expect(rows.map(({ isLiving }) => isLiving)).toEqual([false]);
    expect((await ofRecord('description-changed')).at(-1)).toMatchObject({
      act: 'retire',
      thing: rows[0]?.id,
      why: 'Sold',
    });
    const { rows: plans } = await query('SELECT version FROM plan_version WHERE equipment_id = $1', [rows[0]?.id]);
    expect(plans).toEqual([{ version: 1 }]);
  });
});
