import { groupOf, withPart } from '#core/forms/draft';
import type { DraftGroup } from '#core/forms/field';
import { addDays } from '#core/time/add-days';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Who } from '#server/gate/who';
import { getPlan } from '#server/plans/get-plan';
import { getPlansAt } from '#server/plans/get-plans-at';
import { getPlanForm, type PlanForm, writeTypedPlan } from '#server/plans/plan-form';
import { heater } from '../../_support/build-equipment';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { letIn } from '../../_support/people';
import { keep, stored } from '../../_support/stored';
import { withEquipment } from '../../_support/with-part';

const { query } = freshDatabase();
const PIECE = { site: 'harbour', system: 'reef-1', equipment: 'heater-1' };
let lead: Who;
let base: ReturnType<typeof facility>;

beforeAll(async () => {
  base = facility();
  await keep(base);
  const { siteId } = await stored('harbour');
  lead = await letIn(query, siteId, 'harbour', 'Wren', 'lead');
  PIECE.system = base.systems[0]?.key ?? '';
});

const form = async (units: 'metric' | 'us'): Promise<PlanForm> => {
  const answer = await getPlanForm(lead, { ...PIECE, units });
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return answer.value;
};
const write = async (units: 'metric' | 'us', draft: DraftGroup, { from, latest }: PlanForm) =>
  await writeTypedPlan(lead, { ...PIECE, units, draft, from, latest, reason: 'narrower' });
const newest = async () => {
  const page = await getPlan(lead, PIECE);
  if (!page.ok) throw new Error(JSON.stringify(page.reason));
  return page.value.versions[0];
};

describe('the form of a plan', () => {
  test('has the five layers in their fixed order, and only the regulation a heater can follow', async () => {
    const { fields } = await form('metric');
    expect(fields.map(({ name }) => name)).toEqual(['cutOuts', 'interlocks', 'lostSensing', 'states', 'regulation']);
    const regulation = fields.find(({ name }) => name === 'regulation');
    if (regulation?.kind !== 'one-of') throw new Error('regulation is one of several');
    expect(regulation.of.map(({ value }) => value)).toEqual(['always', 'never', 'thermostat', 'hours']);
  });

  test.each(['metric', 'us'] as const)('sent back untouched writes the very same plan (%s)', async (units) => {
    const shown = await form(units);
    expect((await write(units, shown.draft, shown)).ok).toBe(true);
    const [piece] = base.systems[0]?.equipment ?? [];
    expect((await newest())?.plan).toEqual(piece?.plan);
  });

  test('changes one number, read in the unit of the person', async () => {
    const shown = await form('us');
    const draft = groupOf(withPart(shown.draft, ['regulation', 'lowC'], '75.2'));
    expect((await write('us', draft, shown)).ok).toBe(true);
    // 75.2 °F are 24 °C: (75.2 − 32) / 1.8, the definition of the Fahrenheit scale (NIST Special Publication 811, B.8).
    expect((await newest())?.plan.regulation).toMatchObject({ lowC: 24, highC: 25.2 });
  });

  test('names what is wrong by the fields of the form, at any depth', async () => {
    const shown = await form('metric');
    const above = groupOf(withPart(shown.draft, ['cutOuts', 0, 'above'], 'hot'));
    expect(await write('metric', above, shown)).toMatchObject({
      ok: false,
      reason: { why: 'invalid', faults: [{ path: 'cutOuts.0.above' }] },
    });
    const back = groupOf(withPart(shown.draft, ['regulation', 'lowC'], '27'));
    expect(await write('metric', back, shown)).toMatchObject({
      ok: false,
      // Neither the file's name of the field nor its °C: a person may be reading °F.
      reason: { why: 'invalid', faults: [{ path: 'regulation.lowC', message: 'must be less than “high”' }] },
    });
  });
});

describe('what was in force at an instant', () => {
  const at = async (when: { day?: string; time?: string }) => {
    const answer = await getPlansAt(lead, { ...PIECE, ...when });
    if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
    return answer.value;
  };
  const moved = (table: string, where: string, by: string) =>
    query(`SET session_replication_role = replica; UPDATE ${table} SET at = at ${by} WHERE ${where}`);

  test('is the plan of then, also of what was retired since, and nothing before there was any', async () => {
    const [system] = base.systems;
    if (!system) throw new Error('no system');
    const { day: today } = await at({});
    await moved('plan_status', 'true', `- interval '2 days'`);
    const [old] = system.equipment;
    const changed = withEquipment(heater({ plan: { ...heater().plan, interlocks: [] } }));
    const without = {
      ...changed,
      systems: changed.systems.map((one) => ({
        ...one,
        equipment: one.equipment.filter(({ type }) => type !== 'skimmer'),
      })),
    };
    await keep(without);
    const now = await at({});
    const before = await at({ day: addDays(today, -1), time: '12:00' });
    const heaterOf = (page: typeof now) => page.plans.find(({ equipment }) => equipment === 'heater-1');
    expect(heaterOf(now)?.plan.interlocks).toEqual([]);
    expect(heaterOf(now)?.until).toBeNull();
    expect(heaterOf(before)?.plan).toEqual(old?.plan);
    expect(heaterOf(before)?.until).toEqual(heaterOf(now)?.since);
    const kinds = (page: typeof now) => page.plans.some(({ equipment }) => equipment === 'skimmer');
    expect([kinds(before), kinds(now)]).toEqual([true, false]);
    expect((await at({ day: '2020-01-01', time: '00:00' })).plans).toEqual([]);
  });

  test('is asked in the time of the site: the hour in which summer time ends is its first pass', async () => {
    // 2026-10-25 01:30 in London is 00:30 UTC the first time (RFC 5545, 3.3.5: the first of two).
    await moved('plan_status', `status = 'in-force'`, `+ (timestamptz '2026-10-25 00:45:00Z' - at)`);
    const equipment = (page: Awaited<ReturnType<typeof at>>) => page.plans.length;
    expect(equipment(await at({ day: '2026-10-25', time: '01:30' }))).toBe(0);
    expect(equipment(await at({ day: '2026-10-25', time: '02:00' }))).toBeGreaterThan(0);
  });
});
