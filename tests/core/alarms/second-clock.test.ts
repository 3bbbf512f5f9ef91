import { describe, expect, test } from 'vitest';
import { isNeverSuppressed, longestH, suppressedBy } from '#core/alarms/life/suppression';
import { hasTurned, turnsWithinMin } from '#core/alarms/second-clock';
import { sensor } from '../../_support/build-system';

describe('the second clock', () => {
  const warm = { above: 26.5, deadBand: 0.4 };
  test.each([
    [28, 27.9, false],
    [28, 27.8, false],
    [28, 27.7, true],
    [28, 29, false],
    [26.6, 26.5, true],
    [28, 25, true],
    [null, 28, false],
    [null, 26, true],
    [28, null, false],
  ])('above 26.5 by a dead band of 0.4: from %s to %s has turned: %s', (then, now, turned) =>
    expect(hasTurned(warm, then, now)).toBe(turned),
  );
  test('between two limits goes by the one that was passed', () => {
    const range = { above: 60, below: 40, deadBand: 2 };
    expect(hasTurned(range, 30, 35)).toBe(true);
    expect(hasTurned(range, 30, 61)).toBe(true);
    expect(hasTurned(range, 30, 71)).toBe(false);
  });
  test('runs out when half of what the review leaves is gone, and leaves time to walk there', () => {
    expect(turnsWithinMin('oxygen')).toBeLessThan(turnsWithinMin('temperature'));
    expect(turnsWithinMin(undefined)).toBe(30);
    expect(turnsWithinMin('temperature', 40 * 60)).toBe(20);
    expect(turnsWithinMin('temperature', 90 * 60)).toBe(45);
    expect(turnsWithinMin('temperature', 9 * 3600)).toBe(45);
    expect(turnsWithinMin('oxygen', 60)).toBe(5);
  });
});

describe('suppression', () => {
  const system = {
    sensors: [
      sensor({ key: 't', quantity: 'temperature' }),
      sensor({ key: 'o', quantity: 'oxygen' }),
      sensor({ key: 'f', quantity: 'flow' }),
    ],
  };
  const limit = (key: string, given: { above?: number; below?: number }) => ({
    on: { kind: 'sensor' as const, sensor: key, ...given },
  });
  test('is never of low oxygen and high temperature, by limit or by rate, nor of a series of oxygen', () => {
    expect(isNeverSuppressed(system, limit('o', { below: 5 }))).toBe(true);
    expect(isNeverSuppressed(system, limit('t', { above: 27 }))).toBe(true);
    expect(isNeverSuppressed(system, limit('t', { below: 20, above: 27 }))).toBe(true);
    expect(isNeverSuppressed(system, { on: { kind: 'rate', sensor: 't', risesPerHour: 1, overMin: 30 } })).toBe(true);
    expect(isNeverSuppressed(system, { on: { kind: 'rate', sensor: 'o', fallsPerHour: 1, overMin: 30 } })).toBe(true);
    expect(isNeverSuppressed(system, limit('derived:oxygen-saturation', { below: 80 }))).toBe(true);
    expect(isNeverSuppressed(system, limit('t', { below: 20 }))).toBe(false);
    expect(isNeverSuppressed(system, limit('f', { below: 20 }))).toBe(false);
    expect(isNeverSuppressed(system, { on: { kind: 'silent-sensor', sensor: 'o' } })).toBe(false);
  });
  test('of an operating state ends with its end, and one that outstays it suppresses nothing', () => {
    const flow = { ...limit('f', { below: 20 }), suppressedIn: ['feeding' as const, 'backwash' as const] };
    const states = [
      { state: 'feeding' as const, run: 'a', untilMs: 100 },
      { state: 'backwash' as const, run: 'b', untilMs: 200 },
      { state: 'night' as const, run: 'c', untilMs: 900 },
    ];
    expect(suppressedBy(system, flow, states, 50)?.run).toBe('b');
    expect(suppressedBy(system, flow, states.slice(0, 1), 100)).toBeNull();
    expect(suppressedBy(system, flow, states.slice(2), 50)).toBeNull();
    expect(suppressedBy(system, { ...limit('o', { below: 5 }), suppressedIn: ['feeding'] }, states, 50)).toBeNull();
  });
  test('by people is shortest where it is gravest', () => {
    const [high, low] = (['high', 'low'] as const).map((level) => ({ priority: { level, why: 'so' } }));
    expect(longestH('shelved', {}, true)).toBeLessThan(longestH('shelved', high ?? {}, false));
    expect(longestH('shelved', high ?? {}, false)).toBeLessThan(longestH('shelved', {}, false));
    expect(longestH('shelved', {}, false)).toBe(8);
    expect(longestH('shelved', low ?? {}, false)).toBe(24);
    expect(longestH('out-of-service', low ?? {}, false)).toBe(336);
  });
});
