import { describe, expect, test } from 'vitest';
import type { Check } from '#core/rounds/check';
import { readLine } from '#core/rounds/read/line';
import { enterRequest } from '#shape/rounds/requests';

const ID = '01a2119e-3a5a-773f-ac5d-188c0fd166eb';
const line = { key: 'x', about: { noun: 'sensor' as const, system: 'reef', key: 'x' }, what: 'X', why: 'it matters' };
const warmth: Check = { ...line, kind: 'number', quantity: 'temperature', alarm: { above: 27 } };
const typed = (more: object) => enterRequest.parse({ site: 's', round: ID, check: 'x', entry: ID, ...more });
const read = (check: Check, more: object, last: number | null = null) => readLine(check, typed(more), last);
const kept = (check: Check, more: object) => {
  const answer = read(check, more);
  return answer.ok ? answer.value.value : answer.reason.map(({ path }) => path);
};

describe('a number as it is typed', () => {
  test.each([
    ['24.5', 24.5],
    ['24,5', 24.5],
    [' 24 ', 24],
    ['.5', 0.5],
    ['-1', -1],
    ['−1', -1],
  ])('"%s" is %s', (number, value) => {
    expect(kept(warmth, { number })).toMatchObject({ kind: 'number', value });
  });

  test.each(['', 'warm', '1,234.5', '1e3', 'NaN', 'Infinity', '24.5.1', '0x10', '--1'])('"%s" is none', (number) => {
    expect(() => kept(warmth, { number })).not.toThrow(TypeError);
    const answer = number === '' ? kept(warmth, {}) : kept(warmth, { number });
    expect(answer).toEqual(['number']);
  });

  test('is in the units of whoever typed it, and a limit that is met exactly is not passed by the conversion', () => {
    // 80.6 °F is 27 °C exactly, and a little more in binary.
    const answer = read(warmth, { number: '80.6', units: 'us' });
    expect(answer).toMatchObject({ value: { value: { value: 27 }, question: null } });
    const used: Check = { ...line, kind: 'used' };
    // A US gallon is 231 cubic inches, 3.785 411 784 L exactly.
    expect(kept(used, { number: '2', units: 'us' })).toEqual({ kind: 'used', litres: 7.570824 });
  });
});

describe('what is asked before it is kept', () => {
  const question = (more: object, last: number | null = null) => {
    const answer = read(warmth, more, last);
    return answer.ok ? answer.value.question : answer.reason;
  };

  test('nothing, where a number is as it was', () => {
    expect(question({ number: '25' }, 24.8)).toBeNull();
  });

  test('whether a number that cannot be, that is far from the last, or that is beyond its alarm is right', () => {
    expect(question({ number: '250' })).toMatch(/cannot|can be|Neither/i);
    expect(question({ number: '20' }, 25)).toMatch(/The last one was 25\.0.°C/);
    expect(question({ number: '27.5' }, 26)).toMatch(/above the limit of its alarm/);
  });

  test('what was seen when animals are missing', () => {
    const heads: Check = { ...line, kind: 'head-count', expected: 12 };
    expect(read(heads, { number: '11' })).toMatchObject({
      value: { question: expect.stringContaining('12 are described') },
    });
    expect(read(heads, { number: '12' })).toMatchObject({ value: { question: null } });
    expect(kept(heads, { seen: 'usual' })).toEqual({ kind: 'head-count', count: null });
    expect(kept(heads, { number: '11.5' })).toEqual(['number']);
    // "All seen" pressed over a count that was typed: neither is taken.
    expect(kept(heads, { seen: 'usual', number: '9' })).toEqual(['number']);
    expect(kept(heads, { number: '-1' })).toEqual(['number']);
  });
});

describe('what was not done', () => {
  test('takes no value along, of whatever kind the line is', () => {
    expect(kept(warmth, { number: '25', notDone: 'No time' })).toBeNull();
  });

  test('is nothing when blank, and a correction without a reason is none', () => {
    expect(() => typed({ notDone: '   ' })).toThrow(/blank/);
    expect(() => typed({ number: '25', supersedes: ID })).toThrow(/corrected/);
  });
});
