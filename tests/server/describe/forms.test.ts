import { beforeAll, describe, expect, test } from 'vitest';
import type { Field } from '#core/forms/field';
import { getDescription } from '#server/describe/get-description';
import { getNewSite, newSite } from '#server/describe/new-site';
import { getNewThing } from '#server/describe/get-new-thing';
import { getThing } from '#server/describe/get-thing';
import { LOCAL_PERSON, type Who } from '#server/gate/who';
import { ACTS, THINGS } from '#shape/describe/edit';
import { askedBy, withAsked } from '#server/describe/asked';
import { facility } from '../../_support/build-facility';
import { system as baseSystem } from '../../_support/build-system';
import { freshDatabase } from '../../_support/database';
import { edit, keepEdit } from '../../_support/edit-thing';
import { keep } from '../../_support/stored';

freshDatabase();
const SYSTEM = baseSystem().key;
const HEATER = { site: 'harbour', noun: 'equipment', system: SYSTEM, key: 'heater-1', act: 'change' } as const;
const viewer: Who = { id: 'someone', name: 'Someone', everywhere: null, at: { harbour: 'viewer' } };

beforeAll(async () => {
  await keep(facility());
});

async function fieldsOf(units: 'metric' | 'us' = 'metric', place: Partial<typeof HEATER> = {}): Promise<Field[]> {
  const page = await getThing(LOCAL_PERSON, { ...HEATER, ...place, units });
  if (!page.ok) throw new Error(page.reason.why);
  return page.value.fields;
}

const named = (fields: readonly Field[], name: string) => fields.find((field) => field.name === name);

describe('the form of a thing', () => {
  test('is there for every thing of the site, and for everything that can be done with it', async () => {
    const all = await getDescription(LOCAL_PERSON, { site: 'harbour' });
    const parts = all.ok ? all.value.parts : [];
    const nouns = new Set<string>();
    for (const { system, lists } of parts)
      for (const { noun, things } of lists)
        for (const { key } of things.slice(0, 1)) {
          nouns.add(noun);
          const place = { site: 'harbour', noun, system: system?.key, key, units: 'us' } as const;
          for (const act of ACTS.filter((one) => one === 'change' || one === 'retire'))
            expect(
              await getThing(LOCAL_PERSON, { ...place, act: act as 'change' }),
              `${noun} ${key} ${act}`,
            ).toMatchObject({ ok: true });
        }
    expect([...nouns, 'profile', 'site'].sort()).toEqual([...THINGS].sort());
  });

  test('shows what is used where nothing is entered, with its range, source and confidence, and never writes it in', async () => {
    const place = { site: 'harbour', noun: 'sensor', system: SYSTEM, key: 'floor', act: 'change' } as const;
    expect(await getThing(LOCAL_PERSON, { ...place, units: 'metric' })).toMatchObject({
      ok: true,
      value: { draft: { accuracy: { value: '', from: '' } } },
    });
    const share = named(await fieldsOf(), 'heatToWater');
    expect(share?.starts).toContainEqual(
      expect.objectContaining({
        value: '1',
        for: { field: 'type', in: ['heater'] },
        source: 'an immersed element gives all its power to the water',
        confidence: 'good',
      }),
    );
  });

  test('shows a default in the units of the person', async () => {
    const place = { noun: 'tank', key: 'display' } as unknown as Partial<typeof HEATER>;
    const outlet = async (units: 'metric' | 'us') => named(await fieldsOf(units, place), 'outletMm')?.starts?.[0];
    // Sixty millimetres, 30 to 200: `defaults.json`. An inch is 25.4 mm by definition.
    expect(await outlet('metric')).toMatchObject({ value: '60\u00a0mm', range: '30\u00a0mm to 200\u00a0mm' });
    expect(await outlet('us')).toMatchObject({ value: '2.362\u00a0in', range: '1.181\u00a0in to 7.874\u00a0in' });
  });

  test('of a new piece of equipment has defaults for each type that has one', async () => {
    const page = await getNewThing(LOCAL_PERSON, {
      site: 'harbour',
      noun: 'equipment',
      system: SYSTEM,
      units: 'metric',
    });
    const repair = page.ok ? named(page.value.fields, 'repairMin') : undefined;
    // Fifteen minutes for a heater: `defaults.json`, which the page of the almanac shows with its source.
    const ofHeaters = repair?.starts?.find((start) => start.for?.in.includes('heater'));
    expect(ofHeaters).toMatchObject({ value: '15\u00a0min', range: '5\u00a0min to 40\u00a0min' });
  });

  test('puts first what the review asks for, and says why', () => {
    const inputs = [
      { path: 'systems/a/equipment/b/repairMin', changes: ['x'] },
      { path: 'systems/a/equipment/b/ratedW', changes: [] },
    ].map((one) => ({ ...one, name: '', value: 1, unit: '', source: '' }));
    const frame = { label: '', about: '', optional: true, first: false, kind: 'text', long: false } as const;
    const fields = ['ratedW', 'repairMin'].map((name): Field => ({ ...frame, name }));
    const told = withAsked(
      fields,
      askedBy([{ inputs, askNext: 'systems/a/equipment/b/repairMin' }]),
      'systems/a/equipment/b/',
    );
    expect(told.map(({ asked }) => asked)).toEqual([undefined, expect.stringContaining('asks for this first')]);
  });
});

describe('the page of a thing', () => {
  test('is read by whoever sees the site, without its history where the record is not theirs to read', async () => {
    const page = await getThing(viewer, { ...HEATER, units: 'metric' });
    expect(page).toMatchObject({ ok: true, value: { mayDescribe: false, history: null } });
    const stranger = { ...viewer, at: {} };
    expect(await getThing(stranger, { ...HEATER, units: 'metric' })).toMatchObject({
      ok: false,
      reason: { why: 'not-found' },
    });
    expect(await getNewThing(viewer, { site: 'harbour', noun: 'room', units: 'metric' })).toMatchObject({
      ok: false,
      reason: { why: 'not-allowed' },
    });
  });

  test('tells what became of it, and of the one that had its key before', async () => {
    const reason = { why: 'It cracked', on: '2026-03-01' };
    await keepEdit(
      await edit({ noun: 'sensor', system: SYSTEM, key: 'floor' }, 'replace', { name: 'Floor, new', ...reason }),
    );
    await keepEdit(await edit({ noun: 'sensor', system: SYSTEM, key: 'floor' }, 'change', { name: 'Floor' }));
    const page = await getThing(LOCAL_PERSON, { ...HEATER, noun: 'sensor', key: 'floor', units: 'metric' } as never);
    const history = page.ok ? page.value.history : null;
    expect(history?.before).toHaveLength(1);
    expect(history?.entries.map(({ what }) => what)).toEqual([
      expect.stringMatching(/^Changed the description \(sensor\): .*Floor, new → Floor$/),
      expect.stringMatching(/^Replaced \(sensor\): .*Why: It cracked \(2026-03-01\)$/),
    ]);
  });

  test('of what cannot be done with it is not there', async () => {
    const place = { site: 'harbour', noun: 'room', key: 'gallery', units: 'metric' } as const;
    expect(await getThing(LOCAL_PERSON, { ...place, act: 'replace' })).toMatchObject({ ok: false });
    expect(await getThing(LOCAL_PERSON, { ...place, key: 'none', act: 'change' })).toMatchObject({ ok: false });
  });
});

describe('a new site', () => {
  const room = {
    name: 'Shed',
    key: 'shed',
    temperatureC: { value: '68', from: '' },
    humidityPct: { value: '', from: 'unknown' },
  };
  const draft = { name: 'Mill Quay', key: 'mill-quay', zone: 'Europe/London', room };

  test('begins with its first room, in the units of the person', async () => {
    expect(await newSite(LOCAL_PERSON, { draft, units: 'us' })).toEqual({
      ok: true,
      value: { key: 'mill-quay', name: 'Mill Quay' },
    });
    const page = await getThing(LOCAL_PERSON, {
      site: 'mill-quay',
      noun: 'room',
      key: 'shed',
      act: 'change',
      units: 'metric',
    });
    expect(page).toMatchObject({
      ok: true,
      value: { draft: { temperatureC: { value: '20' }, humidityPct: { from: 'unknown' } } },
    });
    expect(await newSite(LOCAL_PERSON, { draft, units: 'us' })).toMatchObject({
      ok: false,
      reason: { faults: [{ path: 'key', message: 'is taken by another site' }] },
    });
  });

  test('with faults is refused, each at its field', async () => {
    const wrong = { ...draft, key: 'other', zone: 'Europe/Londn', room: { ...room, key: '' } };
    const answer = await newSite(LOCAL_PERSON, { draft: wrong, units: 'us' });
    const faults = !answer.ok && answer.reason.why === 'invalid' ? answer.reason.faults : [];
    expect(faults.map(({ path }) => path)).toEqual(['zone', 'room.key']);
  });

  test('is begun by a manager of all sites and by nobody less', async () => {
    const manager: Who = { ...viewer, everywhere: 'manager' };
    expect(await getNewSite(manager, { units: 'metric' })).toMatchObject({ ok: true });
    for (const who of [
      viewer,
      { ...viewer, at: { harbour: 'admin' } } as Who,
      { ...viewer, everywhere: 'lead' } as Who,
    ])
      expect(await newSite(who, { draft, units: 'us' })).toMatchObject({ ok: false, reason: { why: 'not-allowed' } });
  });
});
