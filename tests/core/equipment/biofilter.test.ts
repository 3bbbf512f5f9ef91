import { describe, expect, test } from 'vitest';
import { resolveSystem } from '#core/equipment/resolve';
import type { Side } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import { HALF_AMMONIA } from '#core/simulate/nitrify';
import { unionisedShare } from '#core/water/unionised-ammonia';
import { facility } from '../../_support/build-facility';
import { entered } from '../../_support/given';
import { stock, system } from '../../_support/build-system';
import { onlySystem } from '../simulate/course';

/** mg/L of un-ionised ammonia, the least limit of the profiles that come with Holdfast. */
const LIMIT = 0.035;

const kept = (ph: number): Facility =>
  facility({ systems: [system({ ph: entered(ph), feedGPerDay: entered(20), stock: [stock()] })] });

/** What healthy water of a site stands at on a side: total ammonia, and what of it is un-ionised, g/m³. */
function healthy(of: Facility, side: Side): { total: number; free: number } {
  const { chemistry, temperature, salinity } = resolveSystem(of, onlySystem(of), side, null);
  const total = chemistry.ammonia;
  return { total, free: total * unionisedShare(chemistry.ph, 'nbs', temperature, salinity) };
}

describe('a biofilter is never taken for smaller than the animals that live on it show', () => {
  test('at the bad end of what it could turn over, healthy water stays at a third of their limit', () => {
    const site = kept(8.4);
    const bad = healthy(site, 'warm');
    expect(bad.total).toBeGreaterThan(healthy(site, 'nominal').total);
    expect(bad.free).toBeLessThanOrEqual(LIMIT / 3 + 1e-12);
    // Twice its daily feed, the low end of the default, would be more than that.
    expect(bad.total).toBeLessThan(HALF_AMMONIA / (2 - 1));
  });

  test('but what follows from figures as they are stands, however near it comes', () => {
    const sharp = kept(9.4);
    expect(healthy(sharp, 'warm').total).toBe(healthy(sharp, 'nominal').total);
    expect(healthy(sharp, 'nominal').free).toBeGreaterThan(LIMIT);
  });
});
