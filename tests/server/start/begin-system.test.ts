import { difference } from '#core/facility/difference';
import { groupOf, withPart } from '#core/forms/draft';
import type { DraftGroup } from '#core/forms/field';
import { reviewSystem } from '#core/review/review-system';
import { beforeAll, describe, expect, test } from 'vitest';
import { verifyChain } from '#data/records/verify-chain';
import type { Who } from '#server/gate/who';
import type { Compute } from '#server/reviews/compute';
import { getStartForm, previewStart } from '#server/start/begin-system';
import { keepStart } from '#server/start/keep-start';
import { freshDatabase } from '../../_support/database';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
const lead: Who = { id: 'lead', name: 'Lead', everywhere: null, at: { harbour: 'lead' } };
const aquarist: Who = { ...lead, at: { harbour: 'aquarist' } };
const stranger: Who = { ...lead, at: {} };
const base = smallFacility();

/** What a person types into the form, in gallons and degrees Fahrenheit where they read those. */
const typed = (units: 'metric' | 'us'): DraftGroup => {
  const us = units === 'us';
  return {
    what: { name: 'Second reef', kind: 'reef', room: 'gallery', salinity: '35' },
    tanks: {
      role: 'display',
      count: '1',
      volumeL: us ? '100' : '378.5411784',
      depthMm: us ? '20' : '508',
      cover: 'open',
    },
    heat: { keptAtC: us ? '77' : '25', by: 'hard-wired', heaters: { count: '1', eachW: '500' } },
    movement: { circulation: { eachTank: '1', flowLPerH: '3000 L/h' }, skimmer: 'no' },
    animals: [{ group: 'Reef fish', count: '9', eachG: '20 g' }],
    power: {},
  };
};
/** Reviews that were computed, by the system as text: the same system need not be computed twice. */
const computed = new Map<string, ReturnType<typeof reviewSystem>>();
const compute: Compute = async ({ facility, system, on }) => {
  const found = facility.systems.find(({ key }) => key === system);
  if (!found) throw new Error('no system');
  const known = computed.get(JSON.stringify(found)) ?? reviewSystem(facility, found, on);
  computed.set(JSON.stringify(found), known);
  return known;
};
const preview = (who: Who, draft: DraftGroup, units: 'metric' | 'us' = 'metric') =>
  previewStart(who, { site: 'harbour', units, draft }, compute);

beforeAll(async () => {
  await keep(base);
});

describe('beginning a system', () => {
  test('asks eight questions, with what the site has to be chosen from', async () => {
    const form = await getStartForm(lead, { site: 'harbour', units: 'us' });
    if (!form.ok) throw new Error(JSON.stringify(form.reason));
    const { fields, revision } = form.value;
    expect(revision).toBe(1);
    const asked = new Set(fields.flatMap(({ label }) => /^\d/.exec(label) ?? []));
    expect(asked.size).toBe(8);
    const [what, tanks] = fields;
    const room = what?.kind === 'group' ? what.fields.find(({ name }) => name === 'room') : undefined;
    expect(room).toMatchObject({ kind: 'choice', options: base.rooms.map(({ key, name }) => ({ value: key, name })) });
    const volume = tanks?.kind === 'group' ? tanks.fields.find(({ name }) => name === 'volumeL') : undefined;
    expect(volume).toMatchObject({ kind: 'number', unit: { symbol: 'US gal' } });
  });

  test('is for a lead; who may not see the site finds nothing', async () => {
    const raw = { site: 'harbour', units: 'metric' } as const;
    expect(await getStartForm(aquarist, raw)).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await getStartForm(stranger, raw)).toMatchObject({ ok: false, reason: { why: 'not-found' } });
    expect(await preview(aquarist, typed('metric'))).toEqual({ ok: false, reason: { why: 'not-allowed' } });
    expect(await keepStart(aquarist, { ...raw, draft: typed('metric'), basedOn: 1 })).toEqual({
      ok: false,
      reason: { why: 'not-allowed' },
    });
  });

  test('shows what the review says before anything is kept, the same in either custom', async () => {
    const [metric, us] = [await preview(lead, typed('metric')), await preview(lead, typed('us'), 'us')];
    if (!(metric.ok && us.ok)) throw new Error('refused');
    expect(metric.value.review.worst.claimed.before).toBeNull();
    expect(metric.value.review.judged.after).toBeGreaterThan(3);
    // 100 US gal are 378.5411784 L and 20 in are 508 mm exactly (NIST Special Publication 811, appendix B).
    expect(us.value.system).toEqual(metric.value.system);
    expect((await stored('harbour')).revision).toBe(1);
  });

  test('names every fault by its field and keeps what was typed', async () => {
    const wrong = groupOf(withPart(withPart(typed('metric'), ['tanks', 'volumeL'], 'much'), ['what', 'name'], ''));
    expect(await preview(lead, wrong)).toMatchObject({
      ok: false,
      reason: {
        why: 'invalid',
        faults: [
          { path: 'what.name', message: 'is missing' },
          { path: 'tanks.volumeL', message: expect.not.stringContaining('volumeL') },
        ],
      },
    });
    const cold = groupOf(withPart(typed('metric'), ['heat', 'heaters'], undefined));
    expect(await preview(lead, cold)).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'heat' }] },
    });
  });

  test('is refused when the site was changed since; else keeps the one system, its plans and entries, and asks for its review', async () => {
    const raw = { site: 'harbour', units: 'metric', draft: typed('metric') } as const;
    expect(await keepStart(lead, { ...raw, basedOn: 7 })).toMatchObject({ ok: false, reason: { why: 'conflict' } });
    const before = await stored('harbour');
    await query('DELETE FROM graphile_worker._private_jobs');
    expect(await keepStart(lead, { ...raw, basedOn: 1 })).toEqual({
      ok: true,
      value: { site: 'harbour', system: 'second-reef', name: 'Second reef' },
    });
    const after = await stored('harbour');
    expect(difference(before.facility, after.facility).map(({ path, kind }) => `${path} ${kind}`)).toEqual([
      'systems/second-reef added',
    ]);
    // Nobody else has read these plans, which are in force: each says so, and the review finds it.
    const begun = after.facility.systems.find(({ key }) => key === 'second-reef');
    expect(begun?.equipment.map(({ plan }) => plan.ownWord?.why)).toEqual(
      begun?.equipment.map(() => expect.stringMatching(/^its first plan/)),
    );
    const { rows } = await query(`SELECT kind, body FROM record ORDER BY seq DESC LIMIT 3`);
    expect(rows.map(({ kind }) => kind)).toEqual(['plan-in-force', 'plan-in-force', 'system-described']);
    expect(rows[2].body).toEqual({ by: 'lead', system: after.systemIds.get('second-reef'), revision: 2 });
    expect(await verifyChain(after.siteId)).toMatchObject({ isWhole: true });
    expect((await query('SELECT count(*)::int FROM graphile_worker.jobs')).rows).toEqual([{ count: 1 }]);
    const { rows: plans } = await query(
      `SELECT DISTINCT written_by, reason FROM plan_version WHERE written_by = 'lead'`,
    );
    expect(plans).toEqual([{ written_by: 'lead', reason: 'begun with its first answers' }]);
    // The same answers once more make a second system beside the first.
    expect(await keepStart(lead, { ...raw, basedOn: 2 })).toMatchObject({
      ok: true,
      value: { system: 'second-reef-2' },
    });
  });
});
