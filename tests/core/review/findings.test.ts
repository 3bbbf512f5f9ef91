import { caseFindings, figuresOf, gradeOf } from '#core/review/findings';
import { jobsOf } from '#core/review/jobs';
import type { CaseThing, Finding, FindingLine, Grade, HarmClass, Verdict } from '#core/review/result';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { everyHour, faultCase, type GivenOutcome, harm, judgement, outcome } from './build-outcome';
import { judging } from './trying';

const HOUR = 3600;
const given: Record<'no-warning' | 'too-late' | 'some-hours' | 'covered', GivenOutcome> = {
  'no-warning': { noticeS: null, putRightS: null },
  'too-late': { putRightS: 9 * HOUR },
  'some-hours': { putRightS: everyHour((h) => (h < 10 ? 9 * HOUR : HOUR)) },
  covered: {},
};
const FLOOR = harm({ class: 'floor', what: 'water-on-floor', tank: '', tankName: undefined, forMin: 0 });
const PUMP = harm({ class: 'equipment', what: 'pump-dry', tank: 'sump', tankName: 'Sump', forMin: 0 });
const of = (cls: HarmClass, verdict: keyof typeof given) =>
  outcome({ ...given[verdict], harm: cls === 'animals' ? harm() : cls === 'floor' ? FLOOR : PUMP });

describe('how urgent a judgement is', () => {
  test.each<[HarmClass, keyof typeof given, Grade]>([
    ['animals', 'no-warning', 'high'],
    ['animals', 'too-late', 'high'],
    ['animals', 'some-hours', 'medium'],
    ['animals', 'covered', 'low'],
    ['floor', 'no-warning', 'medium'],
    ['floor', 'too-late', 'medium'],
    ['floor', 'some-hours', 'low'],
    ['floor', 'covered', 'low'],
    ['equipment', 'no-warning', 'medium'],
    ['equipment', 'some-hours', 'low'],
  ])('%s, %s: %s', (cls, verdict, grade) => {
    expect(gradeOf(judgement([of(cls, verdict)]))).toBe(grade);
  });

  test.each<Verdict>(['holds', 'dormant', 'not-assessed'])('nothing harmed, %s: low', (verdict) => {
    expect(gradeOf(judgement([], { verdict }))).toBe('low');
  });

  test('animals that can be saved do not hide a floor that is flooded', () => {
    expect(gradeOf(judgement([of('animals', 'covered'), of('floor', 'no-warning')]))).toBe('medium');
    expect(gradeOf(judgement([of('animals', 'too-late'), of('floor', 'no-warning')]))).toBe('high');
  });
});

describe('findings of fault cases', () => {
  const context = judging(facility());
  const heater = (n: number): CaseThing => ({ kind: 'equipment', key: `heater-${n}`, name: `Heater ${n}` });
  const blocked = { fault: 'overflow-blocked', thing: { kind: 'tank', key: 'display', name: 'Display' } } as const;

  test('are those that are grave as claimed, and no others', () => {
    const graveAsTested = faultCase(judgement([of('animals', 'covered')]), {
      tested: judgement([of('animals', 'no-warning')]),
    });
    expect(caseFindings(context, [graveAsTested, faultCase(judgement([]))])).toEqual([]);
    expect(caseFindings(context, [faultCase(judgement([of('animals', 'some-hours')]))])).toHaveLength(1);
  });

  test('are one for each remedy, with a line for each case, the most urgent first and in the title', () => {
    const cases = [
      faultCase(judgement([of('animals', 'some-hours')]), { thing: heater(1), remedies: ['spring-valve'] }),
      faultCase(judgement([of('animals', 'too-late')]), { thing: heater(2), remedies: ['spring-valve'] }),
      faultCase(judgement([of('floor', 'no-warning')]), { ...blocked, remedies: ['second-overflow'] }),
    ];
    const found = caseFindings(context, cases);
    expect(found.map(({ id, grade, title }) => [id, grade, title])).toEqual([
      ['do:spring-valve', 'high', 'Heater 2: heater welded on, and 1 more'],
      ['do:second-overflow', 'medium', 'Display: overflow blocked'],
    ]);
    expect(found[0]?.lines.map(({ from }) => from)).toEqual([
      { case: 'heater-on:heater-2:normal' },
      { case: 'heater-on:heater-1:normal' },
    ]);
    expect(found[0]?.remedy).toBe('Use valves that close by themselves when let go');
  });

  test('tell the outcome that is urgent, with its figures and the source of the fault', () => {
    const both = judgement([of('animals', 'covered'), of('floor', 'too-late')]);
    const [found] = caseFindings(context, [faultCase(both, { ...blocked, remedies: ['second-overflow'] })]);
    const [line] = found?.lines ?? [];
    expect(line?.consequence).toMatch(
      /^Harm after 10\.0 h \(water on the floor\)\. Noticed at once; must be put right within 5\.0 h/,
    );
    expect(line?.figures[0]).toEqual({ name: 'verdict', value: 'too late' });
    expect(line?.source).toContain('common practice');
  });

  test('name every figure of the worst hour, and say in words what is missing', () => {
    const figures = (one: GivenOutcome) =>
      Object.fromEntries(figuresOf(outcome(one)).map(({ name, value }) => [name, value]));
    expect(figures({ putRightS: everyHour((h) => (h === 30 ? 9 * HOUR : HOUR)), noticeS: 600 })).toEqual({
      'worst onset': 'Tuesday 06:00',
      'time to notice': '10 min',
      'last chance': '5.0 h',
      'time to put right': '9.0 h',
      harm: '10.0 h',
      'time to spare': 'short by 4.0 h',
    });
    expect(figures({ noticeS: null, putRightS: null, lastChanceS: 0 })).toMatchObject({
      'time to notice': 'never',
      'last chance': 'none',
      'time to put right': 'never',
      'time to spare': 'none',
    });
    expect(figures({})['time to spare']).toBe('4.0 h');
  });
});

describe('jobs', () => {
  const line = (from: FindingLine['from']): FindingLine => ({
    from,
    cause: '',
    consequence: '',
    figures: [],
    source: '',
  });
  const finding = (remedy: string, grade: Grade, cases: string[], rules: string[] = []): Finding => ({
    id: remedy,
    grade,
    remedy,
    title: remedy,
    lines: [...cases.map((id) => line({ case: id })), ...rules.map((id) => line({ rule: id }))],
  });
  const order = (findings: Finding[], worst: string | null = null) =>
    jobsOf(findings, worst).map(({ remedy }) => remedy);

  test('that ask for the same are one, with the more urgent grade and all lines', () => {
    const jobs = jobsOf(
      [finding('a', 'medium', ['x']), finding('b', 'low', ['y']), finding('a', 'high', [], ['r', 's'])],
      null,
    );
    expect(jobs).toHaveLength(2);
    expect(jobs[0]).toMatchObject({ remedy: 'a', grade: 'high' });
    expect(jobs[0]?.lines).toHaveLength(3);
  });

  test('come by urgency, whatever the number of their lines', () => {
    expect(
      order([
        finding('low', 'low', ['a', 'b', 'c']),
        finding('high', 'high', ['d']),
        finding('mid', 'medium', ['e', 'f']),
      ]),
    ).toEqual(['high', 'mid', 'low']);
  });

  test('lead, among equals, with what answers the worst case, then with what answers most cases, then with paperwork', () => {
    const paper = finding('paper', 'high', [], ['r', 's', 't']);
    const most = finding('most', 'high', ['a', 'b']);
    const worst = finding('worst', 'high', ['w']);
    expect(order([paper, most, worst], 'w')).toEqual(['worst', 'most', 'paper']);
    expect(order([paper, worst, most])).toEqual(['most', 'worst', 'paper']);
  });
});
