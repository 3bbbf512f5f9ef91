import type { Facility } from '#core/facility/facility';
import type { FaultCase } from '#core/review/result';
import { untestedFinding } from '#core/review/untested';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { safeguard, system } from '../../_support/build-system';
import { withSystem } from '../../_support/with-part';
import { faultCase, harm, judgement, outcome } from './build-outcome';
import { judging, untested } from './trying';

const site = (...keys: string[]): Facility =>
  withSystem({ safeguards: system().safeguards.map((one) => (keys.includes(one.key) ? untested(one) : one)) });
const finding = (of: Facility, cases: FaultCase[]) => untestedFinding(judging(of), cases);

const tooLate = judgement([outcome({ putRightS: 36_000 })]);
const covered = judgement([outcome()]);
/** Holds by the safeguards named, and is past saving without them. */
const leaning = (fault: string, ...acted: string[]) => faultCase(judgement([], { acted }), { fault, tested: tooLate });

describe('what is counted on but not tested', () => {
  test('is nothing where all is tested', () => {
    expect(finding(facility(), [faultCase(tooLate)])).toBeNull();
  });

  test('is one finding, with a line for each safeguard, the one that wins most cases first', () => {
    const cases = [
      leaning('return-stops', 'siphon-break'),
      leaning('heater-on', 'heater-1-cut-out', 'siphon-break'),
      leaning('circuit-trips', 'siphon-break'),
      leaning('rcd-trips', 'heater-1-cut-out'),
    ];
    const found = finding(site('heater-1-cut-out', 'feeding-end', 'siphon-break'), cases);
    expect(found?.lines.map(({ cause }) => cause)).toEqual([
      'Siphon break',
      'Heater 1 high cut-out',
      'Feeding pause ends by a hard timer',
    ]);
    expect(found?.lines.map(({ figures }) => figures.find(({ name }) => name === 'cases won')?.value)).toEqual([
      '3',
      '2',
      '0',
    ]);
    expect(found?.title).toBe('3 safeguards are counted on but not tested');
  });

  test('is worth doing soon where a case turns on it, and is no more than paperwork where none does', () => {
    const alone = site('siphon-break');
    expect(finding(alone, [leaning('return-stops', 'siphon-break')])?.grade).toBe('medium');
    expect(finding(alone, [])?.grade).toBe('low');
    expect(finding(alone, [faultCase(tooLate)])?.grade).toBe('low');
    expect(finding(alone, [])?.title).toBe('A safeguard is counted on but not tested');
  });

  test('is found by the alarm it carries: the one that made somebody know', () => {
    const heard = outcome();
    heard.noticeBy = heard.noticeBy.map(() => ({ by: 'alarm', key: 'too-warm' }));
    const c = faultCase(judgement([heard]), { tested: tooLate });
    const lines = (of: Facility) => finding(of, [c])?.lines.map(({ cause, consequence }) => `${cause}: ${consequence}`);
    expect(lines(site('alarm-path'))).toEqual([
      'Alarms of this system reach a person: Fault cases that lean on it and are graver as tested than as claimed: 1.',
    ]);
    expect(lines(site('alarm-path', 'siphon-break'))?.[1]).toBe('Siphon break: No fault case turns on it.');
  });

  test('counts a floor that is flooded only as tested, though the animals come off alike', () => {
    const flooded = outcome({ putRightS: 36_000, harm: harm({ class: 'floor', what: 'water-on-floor', tank: '' }) });
    const c = faultCase(judgement(covered.outcomes, { acted: ['siphon-break'] }), {
      tested: judgement([...covered.outcomes, flooded]),
    });
    expect(finding(site('siphon-break'), [c])).toMatchObject({ grade: 'medium' });
  });

  test('leaves out what is off: nobody counts on it', () => {
    const off = { by: 'Robin', why: 'broken', since: '2026-05-01', until: '2026-07-01' };
    const away = withSystem({ safeguards: [{ ...safeguard({ key: 'siphon-break' }), tests: [], off }] });
    expect(finding(away, [])).toBeNull();
  });

  test('holds what names no safeguard at all, where a case turns on it', () => {
    const c = faultCase(covered, { tested: tooLate });
    const found = finding(facility(), [c]);
    expect(found?.grade).toBe('medium');
    expect(found?.lines).toHaveLength(1);
    expect(found?.lines[0]?.cause).toContain('name no safeguard');
    expect(finding(site('siphon-break'), [c])?.lines).toHaveLength(2);
  });
});
