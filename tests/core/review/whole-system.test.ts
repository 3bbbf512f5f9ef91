import type { AlarmDefinition } from '#core/alarms/definition';
import type { Facility } from '#core/facility/facility';
import { DAYS } from '#core/facility/site';
import type { FaultCase, SystemReview } from '#core/review/result';
import { reviewSystem } from '#core/review/review-system';
import { gravity } from '#core/review/verdict';
import { describe, expect, test } from 'vitest';
import { facility, round, shift } from '../../_support/build-facility';
import { alarm, REVIEWED_ON } from '../../_support/build-system';
import { randomSite } from '../simulate/random-system';
import { renamed, reordered } from './renamed';

const reviewed = (site: Facility): SystemReview => {
  const [system] = site.systems;
  if (!system) throw new Error('nothing to review');
  return reviewSystem(site, system, REVIEWED_ON);
};

/** How grave a case is in both columns; dormant is no graver than holds, for both are harmless alone. */
const graveness = (c: FaultCase): number[] =>
  [c.claimed, c.tested].map(({ verdict }) => (verdict === 'dormant' ? gravity('holds') : gravity(verdict)));

/** Alarms on the power of every piece of equipment and on both sides of every temperature. */
const watching = ({ systems: [system] }: Facility): AlarmDefinition[] => [
  ...(system?.equipment ?? []).map(({ key }) =>
    alarm({ key: `watts-${key}`, on: { kind: 'watts', equipment: key }, delayS: 60 }),
  ),
  ...(system?.sensors ?? [])
    .filter(({ quantity }) => quantity === 'temperature')
    .flatMap(({ key }) => [
      alarm({ key: `hot-${key}`, on: { kind: 'sensor', sensor: key, above: 27 } }),
      alarm({ key: `cold-${key}`, on: { kind: 'sensor', sensor: key, below: 22.5 } }),
    ]),
];

const withAlarms = (site: Facility): Facility => ({
  ...site,
  systems: site.systems.map((one) => ({ ...one, alarms: [...one.alarms, ...watching(site)] })),
});
const withSomebody = (site: Facility): Facility => ({
  ...site,
  shifts: [...site.shifts, shift({ key: 'more', people: ['robin'], days: [...DAYS], from: '18:00', to: '08:00' })],
  rounds: [...site.rounds, round({ key: 'midnight', at: '00:00' })],
});

describe.each([2, 7, 9])('in a system of random size (%i)', (seed) => {
  const base = randomSite(seed);
  const plain = reviewed(base);

  test('detection, and then somebody more to answer it, never make any case graver', () => {
    const alarmed = reviewed(withAlarms(base));
    const answered = reviewed(withSomebody(withAlarms(base)));
    let better = 0;
    for (const before of plain.cases) {
      const steps = [alarmed, answered].map(({ cases }) => cases.find(({ id }) => id === before.id));
      const [first, second] = steps.map((c) => (c ? graveness(c) : []));
      for (const [column, was] of graveness(before).entries()) {
        expect(first?.[column], `${before.id} with alarms`).toBeGreaterThanOrEqual(was);
        expect(second?.[column], `${before.id} with somebody more`).toBeGreaterThanOrEqual(
          first?.[column] ?? Number.NaN,
        );
        if ((second?.[column] ?? 0) > was) better++;
      }
    }
    expect(better).toBeGreaterThan(0);
  });

  test('other names, other keys and another order change no verdict', () => {
    const other = reviewed(reordered(renamed(base)));
    const ids = (review: SystemReview) => review.cases.map(({ id }) => id.replaceAll('x-', '')).sort();
    expect(ids(other)).toEqual(ids(plain));
    for (const before of plain.cases) {
      const after = other.cases.find(({ id }) => id.replaceAll('x-', '') === before.id);
      expect([after?.claimed.verdict, after?.tested.verdict, after?.unsure], before.id).toEqual([
        before.claimed.verdict,
        before.tested.verdict,
        before.unsure,
      ]);
      for (const [i, outcome] of before.claimed.outcomes.entries()) {
        const harmS = after?.claimed.outcomes[i]?.harmS ?? [];
        for (const [h, at] of outcome.harmS.entries())
          expect(((harmS[h] ?? 0) - (at ?? 0)) / (at || 1)).toBeCloseTo(0, 3);
      }
    }
    expect(other.worst.claimed.verdict).toBe(plain.worst.claimed.verdict);
  });
});

describe('the review of the base system', () => {
  const review = reviewed(facility());

  test('has the gravest case first, animals before the floor before the pump', () => {
    const classOf = (c: FaultCase) => c.claimed.outcomes[0]?.harm.class ?? c.tested.outcomes[0]?.harm.class ?? 'none';
    const ranks = review.cases.map((c) => ['animals', 'floor', 'equipment', 'none'].indexOf(classOf(c)));
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    expect(review.worst.claimed.case).toBe(review.cases[0]?.id);
  });

  test('holds no number that is none', () => {
    const numbers: number[] = [];
    JSON.stringify(review, (_, value: unknown) => {
      if (typeof value === 'number') numbers.push(value);
      return value;
    });
    expect(numbers.length).toBeGreaterThan(10_000);
    expect(numbers.every(Number.isFinite)).toBe(true);
  });

  test('never lets a last chance lie after its harm, or a time to put right before its notice', () => {
    const outcomes = review.cases.flatMap((c) => [...c.claimed.outcomes, ...c.tested.outcomes]);
    expect(outcomes.length).toBeGreaterThan(5);
    for (const { harmS, lastChanceS, noticeS, putRightS, spareS, noticeBy } of outcomes) {
      for (let h = 0; h < 168; h++) {
        const [harm, last, notice, right] = [harmS, lastChanceS, noticeS, putRightS].map((list) => list[h] ?? null);
        expect(last === null).toBe(harm === null);
        if (harm !== null && harm !== undefined) expect(last ?? Number.NaN).toBeLessThanOrEqual(harm);
        if (right !== null && right !== undefined) expect(right).toBeGreaterThanOrEqual(notice ?? Number.NaN);
        expect(noticeBy[h]?.by === 'nobody').toBe(notice === null);
        const spare = last === null || right === null ? null : (last ?? 0) - (right ?? 0);
        expect(spareS[h] ?? null).toBe(spare);
      }
    }
  });

  test('says what it leaves out', () => {
    expect(review.notModelled).toContain('disease');
  });
});
