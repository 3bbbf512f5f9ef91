import type { Figure } from '#core/facility/figure';
import { figure } from '#shape/facility/figure';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';

const watts = figure('W', 'Power');

describe('a figure in a file', () => {
  test.each([
    [150, { value: 150, origin: 'entered' }],
    ['0.15 kW', { value: 150, origin: 'entered' }],
    ['unknown', { value: null, origin: 'unknown' }],
    [{ value: 150 }, { value: 150, origin: 'entered' }],
    [
      { value: 150, from: 'measured' },
      { value: 150, origin: 'measured' },
    ],
    [
      { value: '0.15 kW', from: 'default', low: 140, high: '0.2 kW', source: 'plate' },
      { value: 150, origin: 'default', low: 140, high: 200, source: 'plate' },
    ],
    [
      { value: 150, low: 150, high: 150 },
      { value: 150, origin: 'entered', low: 150, high: 150 },
    ],
  ])('written %j is read', (written, held) => {
    expect(watts.parse(written)).toEqual(held);
  });

  test.each([
    ['150'],
    ['Unknown'],
    [null],
    [[150]],
    [{ from: 'measured' }],
    [{ value: null }],
    [{ value: 'unknown' }],
    [{ value: 150, from: 'unknown' }],
    [{ value: 150, low: 151 }],
    [{ value: 150, high: 149 }],
    [{ value: 150, low: -1 }],
    [{ value: 150, source: ' ' }],
    [{ value: 150, origin: 'measured' }],
  ])('written %j is refused', (written) => {
    expect(watts.safeParse(written).success).toBe(false);
  });

  test.each([
    [{ value: 150, origin: 'entered' }, 150],
    [{ value: null, origin: 'unknown' }, 'unknown'],
    [
      { value: 150, origin: 'measured' },
      { value: 150, from: 'measured' },
    ],
    [
      { value: 150, origin: 'entered', low: 140 },
      { value: 150, low: 140 },
    ],
    [
      { value: 150, origin: 'entered', source: 'plate' },
      { value: 150, source: 'plate' },
    ],
  ] satisfies [Figure, unknown][])('%j is written as short as it can be', (held, written) => {
    expect(z.encode(watts, held)).toEqual(written);
  });

  test.each([
    [{ value: null, origin: 'entered' }],
    [{ value: 150, origin: 'unknown' }],
    [{ value: null, origin: 'unknown', low: 1 }],
    [{ value: 150, origin: 'measured', low: 151 }],
    [{ value: -1, origin: 'entered' }],
  ] satisfies [Figure][])('%j contradicts itself and is never written', (held) => {
    expect(z.safeEncode(watts, held).success).toBe(false);
  });
});
