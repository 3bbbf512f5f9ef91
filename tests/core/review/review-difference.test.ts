import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Finding, SystemReview } from '#core/review/result';
import { reviewDifference, isSameReview } from '#core/review/review-difference';
import { reviewSystem } from '#core/review/review-system';
import { describe, expect, test } from 'vitest';
import { REVIEWED_ON, safeguard } from '../../_support/build-system';
import { smallFacility, smallSystem } from '../../_support/small-facility';
import { everyHour, faultCase, harm, judgement, outcome } from './build-outcome';

const HOUR = 3600;
const FLOOR = harm({ class: 'floor', what: 'water-on-floor', tank: '', tankName: undefined, forMin: 0 });

/** A review that says only this. */
function review(given: Partial<SystemReview>): SystemReview {
  const worst = { verdict: 'holds', case: null, spareS: null } as const;
  const none = { cases: [], findings: [], inputs: [], askNext: null, notModelled: [] };
  return { system: 'tank-1', name: 'Tank 1', worst: { claimed: worst, tested: worst }, ...none, ...given };
}

const finding = (id: string, causes: string[], given: Partial<Finding> = {}): Finding => ({
  id,
  grade: 'high',
  remedy: `Do ${id}.`,
  title: id,
  lines: causes.map((cause) => ({ from: { rule: id }, cause, consequence: '', figures: [], source: '' })),
  ...given,
});

describe('fault cases', () => {
  const late = judgement([outcome({ putRightS: 9 * HOUR })]);
  const covered = judgement([outcome()]);
  const of = (before: SystemReview['cases'], after: SystemReview['cases']) =>
    reviewDifference(review({ cases: before }), review({ cases: after })).cases;

  test('another verdict is told of the column in which it changes', () => {
    const after = of([faultCase(late)], [faultCase(late, { claimed: covered })]);
    expect(after).toEqual([
      {
        id: 'heater-on:heater-1:normal',
        title: 'Heater 1: heater welded on',
        column: 'claimed',
        befalls: 'animals',
        before: { verdict: 'too-late', spareS: -4 * HOUR },
        after: { verdict: 'covered', spareS: 4 * HOUR },
        way: 'milder',
      },
    ]);
  });

  test('a floor that is flooded is told, though the animals fare as before', () => {
    const dry = judgement([outcome()]);
    const wet = judgement([outcome(), outcome({ harm: FLOOR, putRightS: 9 * HOUR })]);
    const [claimed, tested] = of([faultCase(dry)], [faultCase(wet)]);
    const told = { befalls: 'floor', before: { verdict: 'holds' }, after: { verdict: 'too-late' }, way: 'graver' };
    expect(claimed).toMatchObject({ column: 'claimed', ...told });
    expect(tested).toMatchObject({ column: 'tested', ...told });
  });

  test('less to spare under the same verdict is told from a minute and a fiftieth on', () => {
    const spare = (s: number) => [faultCase(judgement([outcome({ putRightS: 5 * HOUR - s })]))];
    expect(of(spare(4 * HOUR), spare(4 * HOUR - 280))).toEqual([]);
    expect(of(spare(4 * HOUR), spare(4 * HOUR - 300)).map(({ way }) => way)).toEqual(['graver', 'graver']);
    expect(of(spare(600), spare(545))).toEqual([]);
    expect(of(spare(600), spare(660)).map(({ way }) => way)).toEqual(['milder', 'milder']);
  });

  test('somebody who comes at last is milder than nobody at all, under the same verdict', () => {
    const nobody = judgement([outcome({ putRightS: null, noticeS: 0 })]);
    expect(nobody.verdict).toBe(late.verdict);
    expect(of([faultCase(nobody)], [faultCase(late)]).map(({ way }) => way)).toEqual(['milder', 'milder']);
    expect(of([faultCase(late)], [faultCase(nobody)]).map(({ way }) => way)).toEqual(['graver', 'graver']);
  });

  test('what is not assessed on one side is neither graver nor milder', () => {
    const unknown = judgement([], { verdict: 'not-assessed', reason: 'a figure is missing' });
    expect(of([faultCase(late)], [faultCase(unknown)]).map(({ way }) => way)).toEqual(['other', 'other']);
  });

  test('graver first, then new, then milder, then gone; within each, the gravest first', () => {
    const named = (key: string, one = late) =>
      faultCase(one, { thing: { kind: 'equipment', key, name: key }, tested: one });
    const some = judgement([outcome({ putRightS: everyHour((h) => (h < 10 ? 9 * HOUR : HOUR)) })]);
    const before = [named('worse', covered), named('worst', covered), named('better'), named('lost')];
    const after = [named('worse', some), named('worst'), named('better', covered), named('found')];
    expect(of(before, after).map(({ title, way }) => `${title.split(':')[0]} ${way}`)).toEqual(
      ['worst graver', 'worse graver', 'found new', 'better milder', 'lost gone'].flatMap((one) => [one, one]),
    );
  });
});

describe('findings', () => {
  const of = (before: Finding[], after: Finding[]) =>
    reviewDifference(review({ findings: before }), review({ findings: after })).findings;
  const causes = (lines: Finding['lines']) => lines.map(({ cause }) => cause);

  test('come, change and go, in this order', () => {
    const before = [finding('gone', ['a']), finding('kept', ['a']), finding('other', ['a', 'b'])];
    const after = [finding('kept', ['a']), finding('other', ['b', 'c']), finding('new', ['a'])];
    expect(of(before, after).map(({ id, come, go }) => [id, causes(come), causes(go)])).toEqual([
      ['new', ['a'], []],
      ['other', ['c'], ['a']],
      ['gone', [], ['a']],
    ]);
  });

  test('two causes that read alike count as two', () => {
    const [change] = of([finding('twice', ['a', 'a'])], [finding('twice', ['a'])]);
    expect([change?.come, causes(change?.go ?? [])]).toEqual([[], ['a']]);
  });

  test('another grade alone is told', () => {
    const change = of([finding('same', ['a'])], [finding('same', ['a'], { grade: 'low' })]);
    expect(change).toMatchObject([{ before: 'high', after: 'low', come: [], go: [] }]);
  });
});

describe('of whole reviews', () => {
  /** The small system, its heater with a hard-wired contact that opens at 27 °C. */
  const guarded = (system: System): System => ({
    ...system,
    safeguards: [safeguard({ key: 'contact', name: 'Contact', kind: 'cut-out', tests: [] })],
    equipment: system.equipment.map((one) =>
      one.type === 'heater'
        ? {
            ...one,
            plan: {
              ...one.plan,
              cutOuts: [
                { quantity: 'temperature', tank: 'display', above: 27, reset: 'manual', safeguard: 'contact' } as const,
              ],
            },
          }
        : one,
    ),
  });
  const reviewed = (site: Facility): SystemReview => {
    const [system] = site.systems;
    if (!system) throw new Error('nothing to review');
    return reviewSystem(site, system, REVIEWED_ON);
  };
  const plain = reviewed(smallFacility());
  const safer = reviewed(smallFacility(guarded(smallSystem())));

  test('a review does not differ from itself', () => {
    expect(isSameReview(reviewDifference(plain, reviewed(smallFacility())))).toBe(true);
  });

  test('a cut-out that nothing proves leaves more time as claimed alone, and is told back to front the other way round', () => {
    const there = reviewDifference(plain, safer);
    const back = reviewDifference(safer, plain);
    const welded = there.cases.find(({ id, column }) => id.startsWith('heater-on') && column === 'claimed');
    expect(welded).toMatchObject({ way: 'milder', after: { verdict: 'covered' } });
    const key = (one: { id: string; column: string }) => `${one.id} ${one.column}`;
    const forth = there.cases.map((c) => [key(c), c.before, c.after]).sort();
    expect(back.cases.map((c) => [key(c), c.after, c.before]).sort()).toEqual(forth);
    expect(back.findings.map(({ id, come, go }) => [id, go, come]).sort()).toEqual(
      there.findings.map(({ id, come, go }) => [id, come, go]).sort(),
    );
    const told = there.cases.filter(({ id }) => id === welded?.id).map(({ column }) => column);
    expect(told, 'nothing proves the contact, so as tested all is as it was').toEqual(['claimed']);
    expect(there.findings.flatMap(({ come }) => come.map(({ cause }) => cause))).toContain('Contact');
  });

  test('where there was no system everything is new, and the worst has no before', () => {
    const { worst, cases, judged } = reviewDifference(null, plain);
    expect(worst.claimed.before).toBeNull();
    expect(worst.claimed.after?.case?.id).toBe(plain.worst.claimed.case);
    expect(new Set(cases.map(({ way }) => way))).toEqual(new Set(['new']));
    expect(judged).toEqual({ before: 0, after: plain.cases.length });
  });
});
