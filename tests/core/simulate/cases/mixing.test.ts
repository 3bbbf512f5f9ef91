import { describe, expect, test } from 'vitest';
import type { Equipment } from '#core/facility/system';
import { plan } from '../../../_support/build-equipment';
import { facility, site } from '../../../_support/build-facility';
import { stock, system, tank } from '../../../_support/build-system';
import { entered } from '../../../_support/given';
import { profileWith, salinity, temperature, volume } from '../course';
import { befallen, dissolved } from './case-support';

const POOL = { siphonBreakMm: undefined, siphonSafeguard: undefined, drainDownMm: undefined, outletMm: undefined };

function changed(litres: number, drawnL: number, mains: { oxidantMgL: number; temperatureC: number }) {
  return facility({
    site: site({ mains: { oxidantMgL: entered(mains.oxidantMgL), temperatureC: entered(mains.temperatureC) } }),
    profiles: [profileWith()],
    systems: [
      system({
        kind: 'tropical-fresh',
        salinity: 0,
        tanks: [tank({ ...POOL, volumeL: litres, surfaceM2: litres / 600 })],
        equipment: [],
        sensors: [],
        stock: [stock({ count: 1, profile: 'exact' })],
        alarms: [],
        states: [{ name: 'water-change', lastsMin: entered(30), endsBy: 'person', drawnL: entered(drawnL) }],
      }),
    ],
  });
}

test('half a fresh-water tank of 46 gallons refilled from the salt line stands at 17.5 (blogs.thatpetplace.com, 2010-05-26)', () => {
  const of = changed(174, 87, { oxidantMgL: 0, temperatureC: 20 });
  const course = befallen(of, 'new-water-wrong-salt', { hours: 1 });
  expect(volume(course, 'display')).toBeCloseTo(0.174, 2);
  expect(salinity(course, 'display')).toBeGreaterThan(17.3);
  expect(salinity(course, 'display')).toBeLessThan(17.7);
});

test('a koi pond of 94,600 L that took 37,900 L of tap water at 2 mg/L stands at 0.8 mg/L (austinponddoctor.com)', () => {
  const of = changed(94_600, 37_900, { oxidantMgL: 2, temperatureC: 15 });
  const course = befallen(of, 'new-water-chlorinated', { hours: 40 / 60 });
  const found = dissolved(course, 'display', 'oxidant');
  expect(found).toBeGreaterThan(0.75);
  expect(found).toBeLessThan(0.81);
});

test('a third of cold mains water takes a tank down by a third of the difference: the sum of two waters', () => {
  const of = changed(300, 100, { oxidantMgL: 0, temperatureC: 8 });
  const before = temperature(befallen(of, 'new-water-cold', { hours: 0.4 }), 'display');
  const after = temperature(befallen(of, 'new-water-cold', { hours: 0.75 }), 'display');
  expect(before - after).toBeGreaterThan((before - 8) / 3 - 0.5);
  expect(before - after).toBeLessThan((before - 8) / 3 + 0.5);
});

describe('dechlorination of a flow-through fish house stops; fatal within 30 minutes (ualberta.ca, 2017-05)', () => {
  // Flow, tanks and chlorine not told: one to three tank volumes an hour, 0.5 to 2 mg/L in the mains.
  const after30min = (exchanges: number, oxidantMgL: number) => {
    const supply: Equipment = {
      key: 'supply',
      name: 'Supply',
      type: 'supply',
      tank: 'display',
      source: 'mains',
      flowLPerH: entered(400 * exchanges),
      plan: plan(),
    };
    const dechlorinator: Equipment = {
      key: 'dose',
      name: 'Dechlorination',
      type: 'dechlorinator',
      tank: 'display',
      removes: entered(1),
      plan: plan(),
    };
    const of = facility({
      site: site({ mains: { oxidantMgL: entered(oxidantMgL) } }),
      profiles: [profileWith()],
      systems: [
        system({
          kind: 'tropical-fresh',
          salinity: 0,
          tanks: [tank({ ...POOL, volumeL: 400, surfaceM2: 0.8, drainAboveMm: 5 })],
          equipment: [supply, dechlorinator],
          sensors: [],
          stock: [stock({ count: 1, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });
    const course = befallen(of, 'dechlorination-stops', { hours: 0.5, fresh: true });
    return dissolved(course, 'display', 'oxidant');
  };

  test('after half an hour there is what mixing says, up to what the fish and the decay take', () => {
    const mixed = (exchanges: number, c: number) => c * (1 - Math.exp(-exchanges / 2));
    for (const [exchanges, c] of [
      [1, 0.5],
      [3, 2],
    ] as const) {
      expect(after30min(exchanges, c)).toBeLessThan(1.02 * mixed(exchanges, c));
      expect(after30min(exchanges, c)).toBeGreaterThan(0.7 * mixed(exchanges, c));
    }
  });

  test('ten times and more the 0.019 mg/L that an hour may bring (chlorine criteria of Washington State, WAC 173-201A-240)', () => {
    expect(after30min(1, 0.5)).toBeGreaterThan(0.15);
    expect(after30min(3, 2)).toBeGreaterThan(1);
  });
});
