import { expect, test } from 'vitest';
import type { Shift } from '#core/rota/rota';
import { shiftsInForce } from '#core/rota/in-force';
import { facility, shift } from '../../_support/build-facility';

const TWO: Shift = { ...shift({ kind: 'on-call' }), everyWeeks: 2 };
const near: Shift = { ...TWO, key: 'near', people: ['sam'], starts: '2026-06-01' };
const far: Shift = { ...TWO, key: 'far', people: ['robin'], starts: '2026-06-08' };
const entered = (value: number) => ({ value, origin: 'entered' as const });
const people = facility().people.map((one) => ({ ...one, travelMin: entered(one.key === 'robin' ? 50 : 10) }));
const counted = (shifts: Shift[], on = '2026-06-20') =>
  shiftsInForce(facility({ shifts, people }), on).shifts.map(({ key }) => key);

test('shifts that take turns count once, with whoever has the longest way', () => {
  expect(counted([near, far])).toEqual(['far']);
  expect(counted([far, near])).toEqual(['far']);
  // In the first of the two weeks the second has not begun, and comes within the turn.
  expect(counted([near, far], '2026-06-02')).toEqual(['far']);
});

test('a week that is left out is covered by nobody', () => {
  expect(counted([near])).toEqual([]);
  expect(counted([near, { ...far, starts: '2026-06-15' }])).toEqual([]);
  expect(counted([near, { ...far, from: '19:00' }])).toEqual([]);
  expect(counted([near, { ...far, ends: '2026-06-14' }])).toEqual([]);
});

test('a rule of its own is no cover of every week, and a shift of each week stands beside those that take turns', () => {
  expect(counted([shift({ key: 'ruled', starts: '2026-06-01', rule: 'FREQ=MONTHLY;BYDAY=1SA' })])).toEqual([]);
  expect(counted([shift({ key: 'each' }), near, far])).toEqual(['each', 'far']);
});
