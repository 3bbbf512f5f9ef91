import { beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import { keepChange } from '#server/describe/keep-change';
import { previewChange } from '#server/describe/preview-change';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { describedSite } from '../../_support/described-site';
import { edit, keepEdit, type Meant } from '../../_support/edit-thing';
import { stored } from '../../_support/stored';
import { system as baseSystem } from '../../_support/build-system';

const { query } = freshDatabase();
const { anew, ofRecord, rowsOf } = describedSite(query);
const SYSTEM = baseSystem().key;
const HEATER: Meant = { noun: 'equipment', system: SYSTEM, key: 'heater-1' };
const entered = (value: string) => ({ value, from: 'entered' });

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
