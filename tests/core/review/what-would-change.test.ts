import { describe, expect, test } from 'vitest';
import { leadingCases } from '#core/review/leading-cases';
import type { FaultCase, Finding, OpenInput, SystemReview } from '#core/review/result';
import type { Combination, Fix, Study } from '#core/review/study';
import { toldCase } from '#core/review/told-case';
import { whatWouldChange } from '#core/review/what-would-change';
import { everyHour, faultCase, harm, judgement, outcome } from './build-outcome';

const HOUR = 3600;
const FLOOR = harm({ class: 'floor', what: 'water-on-floor', tank: '', tankName: undefined, forMin: 0 });
const late = judgement([outcome({ putRightS: 9 * HOUR })]);

function review(given: Partial<SystemReview>): SystemReview {
  const worst = { verdict: 'holds', case: null, spareS: null } as const;
  const none = { cases: [], findings: [], inputs: [], askNext: null, notModelled: [] };
  return { system: 'tank-1', name: 'Tank 1', worst: { claimed: worst, tested: worst }, ...none, ...given };
}

function study(given: Partial<Study>): Study {
  const fixFirst = { alone: [], order: [], open: 0 };
  const none = { combinations: [], minimalSets: [], cut: 'covered' as const, drift: [], tried: 0 };
  return { system: 'tank-1', on: '2026-06-01', fixFirst, ...none, ...given };
}

const input = (path: string, low: number, high: number, changes: string[]): OpenInput => ({
  path,
  name: path,
  value: 10,
  unit: 'W/K',
  low,
  high,
  source: 'common practice, no source',
  changes,
});

const fix = (title: string, of: FaultCase, gainS: number | null, to: Fix['wins'][number]['to']): Fix => ({
  id: title,
  remedy: 'cut-out',
  column: 'claimed',
  title,
  wins: [{ case: of.id, title: of.title, from: 'too-late', to, befalls: { from: 'animals', to: null }, gainS }],
  losses: [],
});

describe('what would change a verdict', () => {
  test('is the hour, where some hours of the week leave time to spare and others none', () => {
    const c = faultCase(judgement([outcome({ putRightS: everyHour((h) => (h < 48 ? 9 * HOUR : HOUR)) })]));
    expect(whatWouldChange(review({ cases: [c] }), null, c).hours).toEqual({ bare: 48, harmful: 168 });
  });

  test('hours that end in no harm are neither', () => {
    const c = faultCase(judgement([outcome({ harmS: everyHour((h) => (h < 100 ? 10 * HOUR : null)) })]));
    expect(whatWouldChange(review({ cases: [c] }), null, c).hours).toEqual({ bare: 0, harmful: 100 });
  });

  test('is the test of what acted as claimed and does not as tested, where that makes a difference', () => {
    const held = judgement([outcome()], { acted: ['cut-out', 'siphon'] });
    const lost = { ...late, acted: ['siphon'] };
    const of = (tested: typeof held) => {
      const c = faultCase(held, { tested });
      return whatWouldChange(review({ cases: [c] }), null, c);
    };
    expect(of(lost)).toMatchObject({ untested: ['cut-out'], tested: 'too-late' });
    expect(of(judgement([outcome()], { acted: [] })).untested).toEqual([]);
  });

  test('is a change of the system, the one that saves most first; and nothing of another case', () => {
    const [c, other] = [faultCase(late), faultCase(late, { fault: 'heater-off' })];
    const alone = [
      fix('Second heater', other, HOUR, 'covered'),
      fix('Tighter alarm', c, HOUR, 'some-hours'),
      fix('Smaller heater', c, 4 * HOUR, 'covered'),
      fix('High cut-out', c, null, 'holds'),
    ];
    const found = whatWouldChange(review({ cases: [c] }), study({ fixFirst: { alone, order: [], open: 2 } }), c);
    expect(found.fixes.map(({ title }) => title)).toEqual(['High cut-out', 'Smaller heater', 'Tighter alarm']);
  });

  test('is a safeguard that dies, of this fault in this state, where that is graver', () => {
    const c = faultCase(judgement([outcome()]));
    const dead = (name: string, verdict: Combination['verdict'], thing = c.thing): Combination => ({
      id: name,
      kind: 'safeguard-dead',
      state: 'normal',
      parts: [
        { kind: 'fault', fault: c.fault, title: c.title, thing },
        { kind: 'safeguard', key: name, name },
      ],
      because: '',
      alone: 'covered',
      verdict,
      harm: null,
      spareS: null,
      perYear: null,
    });
    const combinations = [
      dead('Harmless', 'covered'),
      dead('Mail', 'too-late'),
      dead('Cut-out', 'no-warning'),
      dead('Another', 'no-warning', { ...c.thing, key: 'heater-2' }),
    ];
    expect(whatWouldChange(review({ cases: [c] }), study({ combinations }), c).dead).toEqual([
      { name: 'Cut-out', verdict: 'no-warning' },
      { name: 'Mail', verdict: 'too-late' },
    ]);
  });

  test('is the figure with the widest range of those that change it alone', () => {
    const c = faultCase(late, { unsure: true });
    const inputs = [
      input('wide-of-another', 1, 90, ['x']),
      input('narrow', 9, 11, [c.id]),
      input('wide', 5, 20, [c.id]),
    ];
    expect(whatWouldChange(review({ cases: [c], inputs, askedOf: [c.id] }), null, c)).toMatchObject({
      figure: { path: 'wide' },
      isAsked: true,
    });
    expect(whatWouldChange(review({ cases: [c] }), null, c)).toMatchObject({ figure: null, isAsked: false });
  });
});

describe('a fault case as it is told', () => {
  const both = judgement([outcome(), outcome({ harm: FLOOR, putRightS: 9 * HOUR })]);

  test('is led by the flood that nobody stops, not by the animals that are saved in time', () => {
    const told = toldCase(faultCase(both, { tested: judgement([outcome()]) }));
    expect(told.claimed).toMatchObject({ verdict: 'too-late' });
    expect(told.claimed.outcomes.map((one) => one.harm.class)).toEqual(['floor', 'animals']);
    // As tested nothing floods: that column is left as it is.
    expect(told.tested.outcomes.map((one) => one.harm.class)).toEqual(['animals']);
  });

  test('stays as it is where the animals are what is urgent, or nothing is', () => {
    const grave = faultCase(
      judgement([outcome({ putRightS: 9 * HOUR }), outcome({ harm: FLOOR, putRightS: 9 * HOUR })]),
    );
    const quiet = faultCase(judgement([outcome()]));
    expect(toldCase(grave)).toBe(grave);
    expect(toldCase(quiet)).toBe(quiet);
  });

  test('leads as often as findings have it first, and once', () => {
    const c = faultCase(both);
    const finding = (id: string, from: Finding['lines'][number]['from']): Finding => ({
      id,
      grade: 'high',
      remedy: id,
      title: id,
      lines: [{ from, cause: '', consequence: '', figures: [], source: '' }],
    });
    const findings = [finding('a', { rule: 'r' }), finding('b', { case: c.id }), finding('c', { case: c.id })];
    expect(leadingCases(review({ cases: [c], findings }), 9).map(({ id }) => id)).toEqual([c.id]);
    expect(leadingCases(review({ cases: [c], findings }), 0)).toEqual([]);
  });
});
