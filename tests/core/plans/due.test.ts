import { byDue, standingOf } from '#core/plans/due';
import { isTested } from '#core/plans/credit';
import { addDays } from '#core/time/add-days';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { safeguard } from '../../_support/build-system';

const worked = (on: string) => ({ on, result: 'worked' as const });

describe('the day a safeguard is due', () => {
  test('is the last one on which it counts as tested, whatever its interval', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3650 }), fc.integer({ min: 0, max: 20_000 }), (testEveryDays, shift) => {
        const on = addDays('2000-01-01', shift);
        const one = safeguard({ key: 'one', testEveryDays, tests: [worked(on)] });
        const { due } = standingOf(one, on);
        if (due === null) throw new Error('nothing is due');
        expect(isTested(one, due)).toBe(true);
        expect(isTested(one, addDays(due, 1))).toBe(false);
      }),
    );
  });

  test('is none where nothing counts: never tested, failed last, or tested on a day to come', () => {
    const on = '2026-06-10';
    const standing = (...tests: { on: string; result: 'worked' | 'failed' }[]) =>
      standingOf(safeguard({ key: 'one', tests }), on);
    expect(standing()).toEqual({ state: 'untested', last: null, due: null });
    expect(standing(worked('2026-06-11'))).toEqual({ state: 'untested', last: null, due: null });
    expect(standing(worked('2026-06-01'), { on: '2026-06-02', result: 'failed' })).toMatchObject({
      state: 'untested',
      due: null,
    });
  });

  test('is kept while the safeguard is off, which its state says', () => {
    const off = { by: 'Robin', why: 'new probe', since: '2026-06-10', until: '2026-06-12' };
    const one = safeguard({ key: 'one', testEveryDays: 30, tests: [worked('2026-06-01')], off });
    expect(standingOf(one, '2026-06-12')).toMatchObject({ state: 'off', due: '2026-07-01' });
    expect(standingOf(one, '2026-06-13')).toMatchObject({ state: 'tested', due: '2026-07-01' });
  });
});

test('a test calendar begins with what counts for nothing, then goes by the day it is due, then by name', () => {
  const lines = [
    { name: 'b', due: '2026-07-01' },
    { name: 'd', due: null },
    { name: 'a', due: '2026-07-01' },
    { name: 'c', due: '2026-06-30' },
  ];
  expect(lines.sort(byDue).map(({ name }) => name)).toEqual(['d', 'c', 'a', 'b']);
});
