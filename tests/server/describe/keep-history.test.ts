import { beforeEach, describe, expect, test } from 'vitest';
import { previewChange } from '#server/describe/preview-change';
import { LOCAL_PERSON } from '#server/gate/who';
import { entryWords } from '#server/record/entry-words';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { edit, keepEdit, type Meant } from '../../_support/edit-thing';
import { keep, stored } from '../../_support/stored';
import { system as baseSystem } from '../../_support/build-system';

const { query } = freshDatabase();
const { anew, ofRecord, rowsOf } = describedSite(query);
const SYSTEM = baseSystem().key;
const HEATER: Meant = { noun: 'equipment', system: SYSTEM, key: 'heater-1' };
const entered = (value: string) => ({ value, from: 'entered' });

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
