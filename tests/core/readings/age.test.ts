import { isStale } from '#core/readings/age';
import { expect, test } from 'vitest';

const HOUR = 3_600_000;

test.each([
  ['device', HOUR, false],
  ['device', HOUR + 1, true],
  ['hand', 25 * HOUR, false],
  ['file', 27 * HOUR, true],
  ['device', -HOUR, false],
] as const)('the newest reading by %s, %d ms old, is stale: %s', (origin, age, expected) => {
  expect(isStale(origin, age)).toBe(expected);
});
