import { describe, expect, test } from 'vitest';
import {
  alkalinityFromCalciumCarbonate,
  alkalinityFromDegrees,
  alkalinityPerKilogram,
  CALCIUM_CARBONATE_PER_CHARGE,
} from '#core/water/alkalinity-units';
import { ammoniaFromFeed, nitrificationAlkalinity, nitrificationOxygen } from '#core/water/ammonia-from-feed';

describe('units of alkalinity', () => {
  test('one degree is 17.848 mg/L of calcium carbonate and 0.35665 meq/L, one meq/L is 2.804 degrees', () => {
    // encnc.com/d515195.html: 10 mg/L of CaO, 56.08 and 100.09 g/mol.
    expect((10 / 56.08) * 100.09).toBeCloseTo(17.848, 3);
    expect(alkalinityFromDegrees(1)).toBeCloseTo(0.35665, 5);
    expect(1 / alkalinityFromDegrees(1)).toBeCloseTo(2.804, 3);
    expect(alkalinityFromCalciumCarbonate(17.848)).toBe(alkalinityFromDegrees(1));
  });

  test('sea water of 2.5 meq/L is 7 dKH and 125 ppm, as the rule of thumb says', () => {
    // forums.reefcentral.com thread 799678.
    expect(alkalinityFromDegrees(7)).toBeCloseTo(2.5, 1);
    expect(2.5 * CALCIUM_CARBONATE_PER_CHARGE).toBeCloseTo(125, 0);
  });

  test('7 dKH are 2439 µmol/kg in sea water of 35 at 25 °C, and 2497 if a kilogram were taken for a litre', () => {
    expect(alkalinityPerKilogram(alkalinityFromDegrees(7), 25, 35)).toBeCloseTo(2439.5, 0);
    expect(1000 * alkalinityFromDegrees(7)).toBeGreaterThan(2496);
  });
});

describe('ammonia by feed', () => {
  test('is feed × protein × 16 % × 64 %, the published rule; 0.092 gives a tenth less', () => {
    // earthanedge.com: a kilogram of 45 % gives 46.1 g; Timmons & Ebeling (from memory) 41.4 g.
    expect(ammoniaFromFeed(1000, 0.45)).toBeCloseTo(46.1, 1);
    expect(1000 * 0.45 * 0.092).toBeCloseTo(41.4, 1);
  });

  test('is of the size of the older rule, 25 mg of ammonia for a gram of feed of 30 to 40 % protein', () => {
    // cent-dof.blogspot.com; ammonia weighs 17.0305/14.0067 of its nitrogen.
    const low = 1000 * ammoniaFromFeed(1, 0.3) * (17.0305 / 14.0067);
    const high = 1000 * ammoniaFromFeed(1, 0.4) * (17.0305 / 14.0067);
    expect(low).toBeGreaterThan(25);
    expect(high).toBeLessThan(2 * 25);
  });
});

describe('nitrification', () => {
  test('takes 4.57 g of oxygen and 7.14 g of calcium carbonate for a gram of nitrogen', () => {
    // chvagk.com: 4.57; 7.14 in public code quoting the US agency's manual of 1975.
    expect(nitrificationOxygen(1)).toBeCloseTo(4.57, 2);
    expect(nitrificationAlkalinity(1) * CALCIUM_CARBONATE_PER_CHARGE).toBeCloseTo(7.146, 3);
    expect(Math.abs(nitrificationAlkalinity(1) * CALCIUM_CARBONATE_PER_CHARGE - 7.14)).toBeLessThan(0.01);
  });

  test('of a day’s 41.4 g uses 296 g of calcium carbonate, which 496 g of sodium bicarbonate replace', () => {
    const charge = nitrificationAlkalinity(41.4);
    expect(charge * CALCIUM_CARBONATE_PER_CHARGE).toBeCloseTo(296, 0);
    expect(charge * 84.007).toBeCloseTo(496.6, 0);
  });

  test('less than nothing counts as nothing', () => {
    expect([ammoniaFromFeed(-1, 0.4), nitrificationOxygen(-1), nitrificationAlkalinity(-1)]).toEqual([0, 0, 0]);
    expect(ammoniaFromFeed(10, 3)).toBe(ammoniaFromFeed(10, 1));
  });
});
