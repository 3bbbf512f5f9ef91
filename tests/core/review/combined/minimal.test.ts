import { frequencyOf, pfdOf } from '#core/review/combined/frequency';
import { smallest } from '#core/review/combined/minimal';
import { pfdOfTests } from '#core/review/combined/pfd';
import { isSubset } from '#core/review/combined/sets';
import type { HarmClass, Verdict } from '#core/review/result';
import type { Part } from '#core/review/study';
import { gravity } from '#core/review/verdict';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { REVIEWED_ON, safeguard, system } from '../../../_support/build-system';
import { facility } from '../../../_support/build-facility';
import { entered } from '../../../_support/given';
import { harm } from '../build-outcome';

const part = (key: string): Part => ({ kind: 'safeguard', key, name: key });
const candidate = (keys: string[], verdict: Verdict = 'too-late', cls: HarmClass = 'animals') => ({
  parts: keys.map(part),
  state: 'normal' as const,
  verdict,
  harm: harm({ class: cls }),
  spareS: null,
  perYear: null,
});
const keysOf = (sets: ReturnType<typeof smallest>) =>
  sets.map(({ parts }) => parts.map((p) => p.kind === 'safeguard' && p.key).join('+'));

describe('smallest sets that do harm', () => {
  test('hold no smaller one', () => {
    expect(keysOf(smallest([candidate(['a', 'b']), candidate(['a']), candidate(['b', 'c'])]))).toEqual(['a', 'b+c']);
  });

  test('stay where the smaller one does a milder harm, or is put right in time', () => {
    expect(keysOf(smallest([candidate(['a'], 'too-late', 'floor'), candidate(['a', 'b'])]))).toEqual(['a+b', 'a']);
    expect(keysOf(smallest([candidate(['a'], 'covered'), candidate(['a', 'b'])]))).toEqual(['a+b']);
  });

  test('of any candidates: each kept counts, none holds another as grave, and each that is left out holds one that is kept', () => {
    const one = fc.tuple(
      fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { minLength: 1, maxLength: 3 }),
      fc.constantFrom<Verdict>('no-warning', 'too-late', 'some-hours', 'covered', 'holds'),
      fc.constantFrom<HarmClass>('animals', 'floor', 'equipment'),
    );
    fc.assert(
      fc.property(fc.array(one, { maxLength: 12 }), (list) => {
        const all = list.map((given) => candidate(...given));
        const rank = (s: { harm: { class: HarmClass } }) => ['animals', 'floor', 'equipment'].indexOf(s.harm.class);
        const ids = (s: { parts: Part[] }) => s.parts.map((p) => (p.kind === 'safeguard' ? p.key : ''));
        const sets = smallest(all);
        for (const a of sets) {
          expect(gravity(a.verdict)).toBeLessThanOrEqual(gravity('some-hours'));
          for (const b of sets) if (a !== b) expect(isSubset(ids(b), ids(a)) && rank(b) <= rank(a)).toBe(false);
        }
        for (const c of all.filter(({ verdict }) => gravity(verdict) <= gravity('some-hours')))
          expect(sets.some((s) => isSubset(ids(s), ids(c)) && rank(s) <= rank(c))).toBe(true);
      }),
    );
  });
});

describe('how often', () => {
  const sourced = (value: number) => entered(value, { source: 'log of the plant room' });
  const its = (perYear = sourced(0.2)) => ({
    facility: facility(),
    on: REVIEWED_ON,
    system: system({
      rates: [
        { key: 'weld', fault: 'heater-on', thing: 'heater-1', perYear },
        { key: 'dead', fault: 'fails-unseen', thing: 'heater-1-cut-out', perYear: sourced(0.05) },
      ],
      safeguards: [
        safeguard({ key: 'heater-1-cut-out' }),
        { ...safeguard({ key: 'siphon-break' }), failsOnDemand: sourced(0.02) },
        safeguard({ key: 'alarm-path' }),
      ],
    }),
  });
  const weld: Part = {
    kind: 'fault',
    fault: 'heater-on',
    title: 'Heater welded on',
    thing: { kind: 'equipment', key: 'heater-1', name: 'Heater 1' },
  };

  test('is what was entered times what fails when needed', () => {
    expect(frequencyOf(its(), [weld])).toBe(0.2);
    expect(frequencyOf(its(), [weld, part('siphon-break')])).toBeCloseTo(0.004, 12);
    expect(frequencyOf(its(), [weld, part('heater-1-cut-out')])).toBeCloseTo(0.2 * pfdOfTests(0.05, 180), 12);
  });

  test('is never made up: nothing without a figure, without its source, or with a test that is overdue', () => {
    expect(frequencyOf(its(), [weld, part('alarm-path')])).toBeNull();
    expect(frequencyOf(its(entered(0.2)), [weld])).toBeNull();
    expect(frequencyOf(its(), [{ ...weld, fault: 'heater-off' }])).toBeNull();
    expect(frequencyOf(its(), [weld, weld])).toBeNull();
    expect(pfdOf({ ...its(), on: '2028-01-01' }, 'heater-1-cut-out')).toBeNull();
  });
});
