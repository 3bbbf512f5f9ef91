import type { Check, NumberCheck } from '#core/rounds/check';
import { beyondLimit, isAbnormal } from '#core/rounds/abnormal';
import { countRound } from '#core/rounds/count';
import { type Entry, type EntryValue, standingEntries } from '#core/rounds/entry';
import { isFar, lookAlikes } from '#core/rounds/questions';
import { describe, expect, test } from 'vitest';

const line = (key: string) => ({
  key,
  about: { noun: 'sensor' as const, system: 'reef', key },
  what: key,
  why: 'it matters',
});
const warmth: NumberCheck = { ...line('t'), kind: 'number', quantity: 'temperature', alarm: { above: 27, below: 22 } };
const heads: Check = { ...line('h'), kind: 'head-count', expected: 12 };
const dry: Check = { ...line('d'), kind: 'yes-no' };
const number = (value: number, quality: 'good' | 'suspect' = 'good'): EntryValue => ({
  kind: 'number',
  value,
  quality,
});
const entry = (id: string, check: string, over: Partial<Entry> = {}): Entry => ({
  id,
  check,
  atMs: 0,
  by: 'ash',
  value: { kind: 'yes-no', asUsual: true },
  notDone: null,
  note: null,
  supersedes: null,
  reason: null,
  ...over,
});

describe('what is abnormal', () => {
  test.each([
    [27, null],
    [27.01, 'above'],
    [22, null],
    [21.9, 'below'],
  ])('%s is beyond its alarm: %s', (value, expected) => {
    expect(beyondLimit(warmth, value)).toBe(expected);
    expect(isAbnormal(warmth, number(value))).toBe(expected !== null);
  });

  test('a doubtful number, a missing animal, what is not as usual and a test that failed are; the rest is not', () => {
    expect(isAbnormal(warmth, number(25, 'suspect'))).toBe(true);
    expect(isAbnormal(heads, { kind: 'head-count', count: 11 })).toBe(true);
    expect(isAbnormal(heads, { kind: 'head-count', count: 12 })).toBe(false);
    expect(isAbnormal(heads, { kind: 'head-count', count: null })).toBe(false);
    expect(isAbnormal(dry, { kind: 'yes-no', asUsual: false })).toBe(true);
    expect(isAbnormal(dry, { kind: 'used', litres: 9 })).toBe(false);
    expect(isAbnormal(dry, { kind: 'test', result: 'failed', test: 'x' })).toBe(true);
  });
});

describe('what stands on a round', () => {
  const first = entry('1', 'd');
  const second = entry('2', 'd', { supersedes: '1', reason: 'misread', value: { kind: 'yes-no', asUsual: false } });
  const third = entry('3', 'd', { supersedes: '2', reason: 'once more' });

  test('of what was corrected, and corrected again, the last, in whatever order they come', () => {
    for (const order of [
      [first, second, third],
      [third, first, second],
      [second, third, first],
    ])
      expect(standingEntries(order).get('d')?.id).toBe('3');
  });

  test('is counted by how it stands: blank is neither as usual nor not done', () => {
    const notDone = entry('4', 'h', { value: null, notDone: 'no time' });
    expect(countRound([warmth, heads, dry], [first, second, notDone])).toEqual({
      lines: 3,
      blank: 1,
      abnormal: 1,
      notDone: 1,
      corrected: 1,
    });
  });
});

describe('what is asked about a number', () => {
  test.each([
    ['temperature', 28, 25, false],
    ['temperature', 28.1, 25, true],
    ['watts', 130, 100, false],
    ['watts', 134, 100, true],
    ['watts', 134, null, false],
    ['ph', 8.2, 7.6, true],
  ] as const)('%s %s after %s: %s', (quantity, value, last, expected) => {
    expect(isFar(quantity, value, last)).toBe(expected);
  });

  test('the same to the last digit as on three rounds before it is asked about, and not before there are three', () => {
    const now = new Map([['t', number(25.1)]]);
    const same = () => new Map([['t', number(25.1)]]);
    expect(lookAlikes([warmth], now, [same(), same(), same()]).map(({ key }) => key)).toEqual(['t']);
    expect(lookAlikes([warmth], now, [same(), same()])).toEqual([]);
    expect(lookAlikes([warmth], now, [same(), new Map([['t', number(25.2)]]), same()])).toEqual([]);
    expect(lookAlikes([warmth], now, [same(), new Map(), same()])).toEqual([]);
    const zero = new Map([['t', number(0)]]);
    expect(lookAlikes([warmth], zero, [zero, zero, zero])).toEqual([]);
  });
});
