import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drainDownDepth, drainDownVolume } from '#core/water/drain-down';

const depth = fc.double({ min: 0, max: 2, noNaN: true });

test('1.2 m by 0.6 m falling 25 mm give 18 L, and the pipes theirs', () => {
  expect(drainDownVolume(1.2 * 0.6, 0.025, 0)).toBeCloseTo(0.018, 12);
  expect(drainDownVolume(1.2 * 0.6, 0.025, 0.004)).toBeCloseTo(0.022, 12);
});

describe('a stopped return', () => {
  test('stops falling at the crest while its mouth hangs in the air above it', () => {
    expect(drainDownDepth(0.02, 0, 0)).toBe(0.02);
    expect(drainDownDepth(0.02, 0.01, 0.01)).toBe(0.02);
  });

  test('siphons to the break while the break is clear', () => {
    expect(drainDownDepth(0.02, 0.3, 0.04)).toBe(0.04);
  });

  test('siphons to the outlet when the break is blocked or there is none', () => {
    expect(drainDownDepth(0.02, 0.3, 0.3)).toBe(0.3);
  });

  test('stops at the outlet when the break was drilled below it', () => {
    expect(drainDownDepth(0.02, 0.1, 0.2)).toBe(0.1);
  });

  test('never comes down less because the break is blocked, nor rises above the running level', () => {
    fc.assert(
      fc.property(depth, depth, depth, (crest, outlet, siphonBreak) => {
        const clear = drainDownDepth(crest, outlet, siphonBreak);
        return drainDownDepth(crest, outlet, outlet) >= clear && clear >= crest && clear >= 0;
      }),
    );
  });
});

test('less than nothing is nothing', () => {
  expect(drainDownVolume(-1, 1, 0)).toBe(0);
  expect(drainDownVolume(1, -1, -1)).toBe(0);
});
