import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isAbnormal } from '#core/rounds/abnormal';
import type { Check } from '#core/rounds/check';
import { beyondRate, type NotedValue, usedRate } from '#core/rounds/rate';
import { readLine } from '#core/rounds/read/line';

const DAY = 86_400_000;
const line = {
  key: 'x',
  about: { noun: 'equipment' as const, system: 'reef', key: 'x' },
  what: 'X',
  why: 'it matters',
};
const used: Check = { ...line, kind: 'used' };
const doses: Check = { ...line, kind: 'doses', perDay: { from: 2, to: 4 } };
/** Litres noted once a day, the latest first. */
const daily = (...litres: number[]): NotedValue[] =>
  litres.map((one, back) => ({ value: { kind: 'used', litres: one }, atMs: (100 - back) * DAY }));

describe('what was used', () => {
  test('becomes a rate a day once two entries tell, and no stretch is shorter than most of a day', () => {
    expect(usedRate(used, daily(5))).toBeNull();
    expect(usedRate(used, daily(5, 9))?.perDay).toBe(5);
    const twice = daily(3, 2, 4, 1).map((one, back) => ({ ...one, atMs: 100 * DAY - back * (DAY / 2) }));
    // Half a day each: the two latest are one day, the next has nobody before it.
    expect(usedRate(used, twice)).toMatchObject({ perDay: 5, before: [] });
    const ofDoses = [6, 1].map((one, back) => ({
      value: { kind: 'doses' as const, doses: one },
      atMs: -2 * back * DAY,
    }));
    expect(usedRate(doses, ofDoses)?.perDay).toBe(3);
    expect(usedRate({ ...line, kind: 'text' }, daily(5, 9))).toBeNull();
  });

  test('is beyond what is usual where somebody said what is, else by a factor of two from three rates before', () => {
    const six = { value: { kind: 'doses' as const, doses: 6 }, atMs: DAY };
    expect(beyondRate(usedRate(doses, [six, { ...six, atMs: 0 }]))).toBe('above');
    expect(beyondRate(usedRate(used, daily(25, 10, 10, 9)))).toBeNull();
    expect(beyondRate(usedRate(used, daily(25, 10, 10, 9, 1)))).toBe('above');
    expect(beyondRate(usedRate(used, daily(4, 10, 10, 9, 1)))).toBe('below');
    expect(beyondRate(usedRate(used, daily(19, 10, 10, 9, 1)))).toBeNull();
    const rate = usedRate(used, daily(25, 10, 10, 9, 1));
    expect(isAbnormal(used, { kind: 'used', litres: 25 }, rate)).toBe(true);
    expect(isAbnormal(used, { kind: 'used', litres: 25 })).toBe(false);
  });

  test('has a trend where three rates go one way by a fifth', () => {
    expect(usedRate(used, daily(13, 11, 10, 1))?.trend).toBe('rising');
    expect(usedRate(used, daily(8, 9, 11, 1))?.trend).toBe('falling');
    expect(usedRate(used, daily(11, 10.5, 10, 1))?.trend).toBeNull();
    expect(usedRate(used, daily(13, 9, 10, 1))?.trend).toBeNull();
  });

  test('adds up to what was noted, however often somebody looked', () => {
    const walks = fc.array(fc.record({ litres: fc.integer({ min: 0, max: 50 }), h: fc.integer({ min: 1, max: 60 }) }), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(walks, (list) => {
        const atH = (upTo: number) => list.slice(0, upTo + 1).reduce((sum, { h }) => sum + h, 0);
        const noted = list
          .map(({ litres }, index) => ({ value: { kind: 'used' as const, litres }, atMs: atH(index) * 3_600_000 }))
          .reverse();
        const rate = usedRate(used, noted);
        if (!rate) return;
        const all = [rate, ...rate.before];
        const firstMs = Math.min(...noted.map((one) => one.atMs));
        const sum = all.reduce((litres, { perDay, atMs: end }, index) => {
          const sinceMs = all[index + 1]?.atMs;
          return sinceMs === undefined ? litres : litres + (perDay * (end - sinceMs)) / DAY;
        }, 0);
        const oldest = all.at(-1)?.atMs ?? firstMs;
        const noteds = noted.filter((one) => one.atMs > oldest).reduce((litres, { value }) => litres + value.litres, 0);
        expect(sum).toBeCloseTo(noteds, 6);
      }),
      { numRuns: 100 },
    );
  });
});

describe('what is asked of it', () => {
  const ask = (check: Check, number: string, before: NotedValue[] | null, units: 'metric' | 'us' = 'metric') => {
    const typed = { units, entry: 'x', figures: {}, number };
    const read = readLine(check, typed, null, before && { before, atMs: 101 * DAY });
    return read.ok ? read.value.question : read.reason;
  };

  test('is nothing as usual, and of a rate that is off by which factor, in the units of whoever typed it', () => {
    const before = daily(10, 10, 9, 11, 10);
    expect(ask(used, '12', before)).toBeNull();
    expect(ask(used, '40', before)).toBe(
      'That is 40\u00a0L a day, more than 2 times what the rounds before make of it (10\u00a0L a day). What was seen, and what was done?',
    );
    expect(ask(used, '1', before)).toMatch(/less than 1\/2 of what the rounds before make of it \(10/);
    expect(ask(used, '40', before, 'us')).toMatch(/^That is 40\u00a0US\u00a0gal a day/);
    expect(ask(used, '40', null)).toBeNull();
    expect(ask(used, 'x', before)).toMatchObject([{ path: 'number' }]);
    expect(ask(doses, '9', [{ value: { kind: 'doses', doses: 3 }, atMs: 100 * DAY }])).toMatch(
      /^That is 9 doses a day, above what is usual/,
    );
  });
});
