import { DEFAULT_PROFILES, defaultProfile } from '#core/facility/profiles';
import type { Limit, LimitQuantity, ToleranceProfile } from '#core/facility/stock';
import { SYSTEM_KINDS, type SystemKind } from '#core/facility/system';
import { describe, expect, test } from 'vitest';

const MARINE: readonly SystemKind[] = [
  'reef',
  'fish-only-marine',
  'cold-marine',
  'jelly',
  'ray',
  'quarantine',
  'coral-farm',
  'live-food',
];

/** Limits of one quantity on one side, the nearest to the usual band first. */
function limits(
  { limits: all }: ToleranceProfile,
  quantity: LimitQuantity,
  side: 'above' | 'below',
): Required<Limit>[] {
  const found = all.filter((limit) => limit.quantity === quantity && limit[side] !== undefined) as Required<Limit>[];
  return found.sort((a, b) => (side === 'above' ? a.above - b.above : b.below - a.below));
}

describe('the default tolerance profiles', () => {
  test('are one for each kind of system, under its name', () => {
    expect(DEFAULT_PROFILES.map(({ key }) => key).sort()).toEqual([...SYSTEM_KINDS].sort());
    expect(defaultProfile('ray').key).toBe('ray');
  });

  describe.each(SYSTEM_KINDS.map((kind) => [kind, defaultProfile(kind)] as const))('of %s', (kind, profile) => {
    test('keeps the usual band of temperature inside its limits on both sides', () => {
      const [low, high] = profile.usual.temperatureC;
      expect(low).toBeLessThan(high);
      expect(limits(profile, 'temperature', 'below')[0]?.below).toBeLessThan(low);
      expect(limits(profile, 'temperature', 'above')[0]?.above).toBeGreaterThan(high);
    });

    test('keeps the usual band of salinity inside its limits, in salt water on both sides', () => {
      const [low, high] = profile.usual.salinity;
      const below = limits(profile, 'salinity', 'below')[0]?.below;
      expect(limits(profile, 'salinity', 'above')[0]?.above).toBeGreaterThan(high);
      expect(below === undefined ? 'none' : 'some').toBe(
        MARINE.includes(kind) || kind === 'brackish' ? 'some' : 'none',
      );
      expect(below ?? -1).toBeLessThan(low);
    });

    test('has a limit on oxygen below what the animals are kept at', () => {
      expect(limits(profile, 'oxygen', 'below')[0]?.below).toBeLessThan(profile.usual.oxygenMgL);
    });

    test('has limits on the level, and on rise and fall in 24 hours wider than the usual band', () => {
      const [low, high] = profile.usual.temperatureC;
      const level = limits(profile, 'level', 'below')[0]?.below ?? 1;
      expect(level > 0 && level < 1).toBe(true);
      for (const change of ['rise-24h', 'fall-24h'] as const)
        expect(limits(profile, change, 'above')[0]?.above).toBeGreaterThan(Math.min(high - low, 2));
    });

    test('allows a graver limit for no longer than a milder one', () => {
      for (const quantity of ['temperature', 'salinity', 'oxygen'] as const)
        for (const side of ['above', 'below'] as const) {
          const times = limits(profile, quantity, side).map(({ forMin }) => forMin);
          expect(times).toEqual([...times].sort((a, b) => b - a));
          expect(times.every((forMin) => forMin > 0)).toBe(true);
        }
    });

    test('says where its figures come from, without an address, and names memory as memory', () => {
      expect(profile.source).toMatch(/from memory/);
      expect(profile.source).not.toMatch(/https?:|www\.|\[R\d+\]/);
      expect(profile.confidence).not.toBe('good');
    });
  });
});
