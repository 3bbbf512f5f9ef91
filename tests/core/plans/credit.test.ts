import { creditOf, isOff, isTested, lastTest, safeguardsOf } from '#core/plans/credit';
import type { Safeguard, SafeguardTest } from '#core/plans/safeguard';
import { describe, expect, test } from 'vitest';
import { facility } from '../../_support/build-facility';
import { safeguard, system } from '../../_support/build-system';

const worked = (on: string): SafeguardTest => ({ on, result: 'worked' });
const failed = (on: string): SafeguardTest => ({ on, result: 'failed' });
/** Tested every 30 days. */
const ledger = (...tests: SafeguardTest[]) => safeguard({ key: 'cut-out', testEveryDays: 30, tests });

describe('a safeguard counts as tested', () => {
  test.each([
    ['on the day of its test', '2026-03-02', true],
    ['on the last day of its interval', '2026-04-01', true],
    ['not on the day after that', '2026-04-02', false],
    ['not on a day before its only test', '2026-03-01', false],
  ])('%s', (_, on, counts) => {
    expect(isTested(ledger(worked('2026-03-02')), on)).toBe(counts);
  });

  test('over a leap day, which is counted', () => {
    expect(isTested(ledger(worked('2028-02-01')), '2028-03-02')).toBe(true);
    expect(isTested(ledger(worked('2028-02-01')), '2028-03-03')).toBe(false);
  });

  test('never without a test', () => {
    expect(isTested(ledger(), '2026-04-01')).toBe(false);
  });

  test('no longer once it failed, until it has worked again', () => {
    const tests = [worked('2026-03-01'), failed('2026-03-10'), worked('2026-03-20')];
    expect(isTested(ledger(...tests), '2026-03-09')).toBe(true);
    expect(isTested(ledger(...tests), '2026-03-10')).toBe(false);
    expect(isTested(ledger(...tests), '2026-03-20')).toBe(true);
  });

  test('whatever the order in which its tests are written down', () => {
    const tests = [failed('2026-03-10'), worked('2026-03-20'), worked('2026-03-01')];
    expect(isTested(ledger(...tests), '2026-03-12')).toBe(false);
    expect(isTested(ledger(...tests), '2026-03-21')).toBe(true);
  });
});

test('a test of the future is not looked at', () => {
  const ahead = ledger(worked('2026-03-01'), failed('2026-05-01'));
  expect(lastTest(ahead, '2026-03-15')).toEqual(worked('2026-03-01'));
  expect(isTested(ahead, '2026-03-15')).toBe(true);
  expect(lastTest(ledger(worked('2026-05-01')), '2026-03-15')).toBeNull();
});

test('of two tests on one day the one written down last counts', () => {
  expect(lastTest(ledger(failed('2026-03-10'), worked('2026-03-10')), '2026-03-10')).toEqual(worked('2026-03-10'));
  expect(lastTest(ledger(worked('2026-03-10'), failed('2026-03-10')), '2026-03-10')).toEqual(failed('2026-03-10'));
});

test.each([
  ['the day before it went off', '2026-03-04', false],
  ['the day it went off', '2026-03-05', true],
  ['its last day off', '2026-03-09', true],
  ['the day after', '2026-03-10', false],
])('a safeguard is off between its two days, both included: %s', (_, on, off) => {
  const away = { ...ledger(), off: { by: 'Robin', why: 'spare part', since: '2026-03-05', until: '2026-03-09' } };
  expect(isOff(away, on)).toBe(off);
  expect(isOff(ledger(), on)).toBe(false);
});

describe('what is counted on', () => {
  const on = '2026-03-15';
  const credit = (own: Safeguard[], column: 'claimed' | 'tested') => {
    const holding = system({ safeguards: own });
    return creditOf(facility({ systems: [holding] }), holding, column, on);
  };
  const away = { by: 'Robin', why: 'spare part', since: '2026-03-05', until: '2026-03-20' };
  const fresh = ledger(worked('2026-03-10'));

  test.each<[string, Safeguard, boolean, boolean]>([
    ['tested within its interval', fresh, true, true],
    ['tested too long ago', ledger(worked('2026-01-10')), true, false],
    ['never tested', ledger(), true, false],
    ['failed', ledger(failed('2026-03-10')), true, false],
    ['off, however well tested', { ...fresh, off: away }, false, false],
    ['no longer off', { ...fresh, off: { ...away, until: '2026-03-14' } }, true, true],
  ])('%s', (_, one, claimed, tested) => {
    expect(credit([one], 'claimed')('cut-out')).toBe(claimed);
    expect(credit([one], 'tested')('cut-out')).toBe(tested);
  });

  test('a line that names no safeguard, or one without a ledger, is a claim and no more', () => {
    for (const key of [undefined, 'nowhere']) {
      expect(credit([fresh], 'claimed')(key)).toBe(true);
      expect(credit([fresh], 'tested')(key)).toBe(false);
    }
  });

  test("a system leans on the site's safeguards beside its own", () => {
    const base = facility();
    const [reef] = base.systems;
    const keys = reef ? safeguardsOf(base, reef).map(({ key }) => key) : [];
    expect(keys).toEqual(expect.arrayContaining(['heater-1-cut-out', 'battery', 'outside-watch']));
    expect(credit([fresh], 'claimed')('battery')).toBe(true);
  });
});
