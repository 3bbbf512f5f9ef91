import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Check } from '#core/rounds/check';
import { tooQuick } from '#core/rounds/pace';

const place = (key: string) => ({ checks: [{ key: `${key}/a` }, { key: `${key}/b` }] as Check[] });
const PLACES = ['one', 'two', 'three', 'four'].map(place);
const entry = (check: string, s: number, by = 'ash', supersedes: string | null = null) => ({
  check,
  atMs: s * 1000,
  by,
  supersedes,
});

test('four places in half a minute are asked about, four in a minute are not', () => {
  const at = (gap: number) => ['one', 'two', 'three', 'four'].map((key, i) => entry(`${key}/a`, i * gap));
  expect(tooQuick(PLACES, at(10))).toEqual({ places: 4, tookS: 30, leastS: 45 });
  expect(tooQuick(PLACES, at(20))).toBeNull();
});

test('many lines of one place, two places, corrections and two people who share a round say nothing', () => {
  expect(tooQuick(PLACES, [entry('one/a', 0), entry('one/b', 1), entry('two/a', 2)])).toBeNull();
  expect(
    tooQuick(PLACES, [entry('one/a', 0), entry('two/a', 60), entry('three/a', 120), entry('four/a', 121, 'ash', 'x')]),
  ).toBeNull();
  expect(
    tooQuick(PLACES, [entry('one/a', 0), entry('two/a', 1, 'bo'), entry('three/a', 20), entry('four/a', 21, 'bo')]),
  ).toBeNull();
});

test('whoever takes longer is never asked about sooner', () => {
  const times = fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(times, fc.integer({ min: 1, max: 5 }), (gaps, slower) => {
      const walked = (by: number) => {
        const upTo = (i: number) => gaps.slice(0, i + 1).reduce((sum, gap) => sum + gap, 0);
        return ['one', 'two', 'three', 'four'].map((key, i) => entry(`${key}/a`, upTo(i) * by));
      };
      if (tooQuick(PLACES, walked(1)) === null) expect(tooQuick(PLACES, walked(slower))).toBeNull();
    }),
  );
});
