import { describe, expect, test } from 'vitest';
import type { Equipment } from '#core/facility/system';
import { circulationPump, filter, plan } from '../../../_support/build-equipment';
import { facility, room } from '../../../_support/build-facility';
import { stock, system, tank } from '../../../_support/build-system';
import { entered } from '../../../_support/given';
import { profileWith, temperature, timeTo } from '../course';
import { aloneIn, ownHeater } from '../plain';
import { befallen, between, carbonDioxideOf, dissolved, GALLON, phOf } from './case-support';

const HOUR = 3600;
const PLAIN = { siphonBreakMm: undefined, siphonSafeguard: undefined, lossWPerK: undefined };

describe('carbon dioxide on a dry probe all night, 50 gallons at a hardness of 5 (fins.actwin.com, month.200504, msg00223)', () => {
  // pH 6.7 to 5.9. How much the valve let in nobody wrote down; 1 dKH is 0.357 mmol/L.
  const co2: Equipment = {
    key: 'co2',
    name: 'Carbon dioxide',
    type: 'co2',
    tank: 'display',
    co2GPerH: entered(6),
    plan: plan({ regulation: { kind: 'hours', from: '10:00', to: '10:01', by: 'controller' } }),
  };
  const site = facility({
    profiles: [profileWith()],
    systems: [
      system({
        kind: 'tropical-fresh',
        salinity: 0,
        alkalinityMmolL: entered(5 * 0.357),
        ph: entered(6.7),
        tanks: [tank({ ...PLAIN, volumeL: 50 * GALLON, surfaceM2: 0.45 })],
        equipment: [co2],
        sensors: [],
        stock: [stock({ count: 23, eachG: 1, profile: 'exact' })],
        alarms: [],
        states: [],
      }),
    ],
  });
  const course = befallen(site, 'co2-on', { hours: 12, at: 20, fresh: true });
  const hours = Array.from({ length: 120 }, (_, i) => (i / 10) * HOUR);

  test('begins near 30 mg/L, as 3 × 5 × 10^(7 − 6.7) has it', () => {
    expect(carbonDioxideOf(course, 'display', 0)).toBeGreaterThan(25);
    expect(carbonDioxideOf(course, 'display', 0)).toBeLessThan(40);
  });

  test('where free carbon dioxide reaches the 189 mg/L of that rule, pH stands within 0.1 of the 5.9 that was read', () => {
    const at = hours.find((t) => carbonDioxideOf(course, 'display', t) >= 189);
    expect(at).toBeDefined();
    expect(Math.abs(phOf(course, 'display', at) - 5.9)).toBeLessThan(0.1);
  });
});

describe('57 L of limewater in a reef, pH 9.7 (packedhead.net/p237)', () => {
  // A sump of 180 gallons of a system of 300 to 800; saturated limewater holds about 40 mmol/L of charge.
  const flow = 114;
  const doser: Equipment = {
    key: 'limewater',
    name: 'Limewater',
    type: 'doser',
    tank: 'display',
    flowLPerH: entered(flow),
    dosesMmolPerL: entered(40.5),
    plan: plan({ regulation: { kind: 'never', by: 'person' } }),
  };
  const poured = (litres: number) => {
    const site = facility({
      profiles: [profileWith()],
      systems: [
        system({
          alkalinityMmolL: entered(2.8),
          ph: entered(8.1),
          tanks: [tank({ ...PLAIN, volumeL: litres, surfaceM2: litres / 600, rimMm: 500 })],
          equipment: [doser],
          sensors: [],
          stock: [stock({ count: 1, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });
    const course = befallen(site, 'doser-on', { hours: 57 / flow, fresh: true });
    return {
      hardness: (dissolved(course, 'display', 'alkalinity') - dissolved(course, 'display', 'alkalinity', 0)) / 0.357,
      ph: phOf(course, 'display'),
    };
  };

  test('adds 2 to 6 degrees of hardness to 800 down to 300 gallons, as the figures have it', () => {
    expect(poured(800 * GALLON).hardness).toBeGreaterThan(1.5);
    expect(poured(300 * GALLON).hardness).toBeGreaterThan(4.5);
    expect(poured(300 * GALLON).hardness).toBeLessThan(6);
  });

  test('9.7 was read: between the 9.5 of 300 gallons and the 10.3 of the sump alone, without what falls out as carbonate', () => {
    expect(poured(300 * GALLON).ph).toBeGreaterThan(9.4);
    expect(poured(300 * GALLON).ph).toBeLessThan(9.7);
    expect(poured(180 * GALLON).ph).toBeGreaterThan(9.7);
    expect(poured(180 * GALLON).ph).toBeLessThan(10.5);
  });
});

describe('a canister filter left off for twelve hours in 150 L (aquariumadvice.com, thread 187799)', () => {
  // 24.5 to 22 °C, ammonia 0, 37 small fish alive; the room and the fish's weight were not told.
  const site = (eachG: number) =>
    facility({
      rooms: [room({ temperatureC: between(19, 21), humidityPct: 55 })],
      // A limit nobody would set, so that ammonia is followed at all.
      profiles: [profileWith({ quantity: 'ammonia', above: 1e-6 })],
      systems: [
        system({
          kind: 'tropical-fresh',
          salinity: 0,
          ph: entered(7),
          feedGPerDay: entered(1),
          tanks: [tank({ ...PLAIN, volumeL: 150, surfaceM2: 0.36, cover: 'lidded' })],
          equipment: [
            ownHeater(150, { lowC: 24.4, highC: 24.6 }),
            filter({ tank: 'display', ratedW: 15, flowLPerH: 600, wasteLPerH: undefined, wasteToMm: undefined }),
          ],
          sensors: [],
          stock: [stock({ count: 37, eachG, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });

  test('total ammonia stays under the quarter milligram at which a common kit turns green', () => {
    const course = befallen(site(1), 'filter-stops', { hours: 12, at: 20 });
    expect(dissolved(course, 'display', 'ammonia')).toBeLessThan(0.25);
  });

  test('without its heat the water falls from 24.5 to between 21.5 and 23.5 °C; 22 was read', () => {
    const course = befallen(site(1), 'heater-off', { hours: 12, at: 20, fresh: true });
    expect(temperature(course, 'display')).toBeGreaterThan(21.5);
    expect(temperature(course, 'display')).toBeLessThan(23.5);
  });
});

describe('54 rays in a shallow pool: life support lost around midday, alarm at 13:45, most dead from 15:00 (chicagotribune.com, 2015-07-12)', () => {
  // The pool of 60,600 L, 46 cm deep; rays of 5 to 12 kg were not weighed in any account.
  const toOxygen = (limit: number, eachKg: number) => {
    const site = aloneIn(
      25,
      [ownHeater(1, { lowC: 23.9, highC: 24.1 })],
      profileWith({ quantity: 'oxygen', below: limit }),
      {
        kind: 'ray',
        tanks: [tank({ ...PLAIN, volumeL: 60_600, surfaceM2: 132, cover: 'open' })],
        stock: [stock({ count: 54, eachG: 1000 * eachKg, profile: 'exact' })],
      },
    );
    return timeTo(befallen(site, 'heater-off', { hours: 24, fresh: true }), 'oxygen') / HOUR;
  };

  test('rays of 12 down to 5 kg are at 3 mg/L after 1.8 to 3.9 hours: deaths were told from three to four and a half', () => {
    expect(toOxygen(3, 12)).toBeGreaterThan(1.5);
    expect(toOxygen(3, 12)).toBeLessThan(2.5);
    expect(toOxygen(3, 5)).toBeGreaterThan(3);
    expect(toOxygen(3, 5)).toBeLessThan(4.5);
  });

  test('an alarm at 5 mg/L leaves between one hour and two and a half to 3 mg/L: the set point was wrong, not the rota', () => {
    for (const each of [12, 8, 5]) {
      const leaves = toOxygen(3, each) - toOxygen(5, each);
      expect(leaves).toBeGreaterThan(1);
      expect(leaves).toBeLessThan(2.5);
    }
  });
});

describe('a lagoon of 18 rays and 3 sharks, the one pump that aerates it tripped in an evening storm, found at 07:30 (fox17online.com, 2016-07-08)', () => {
  // Neither volume nor weights told: 60 to 150 m³ a metre deep, 8 kg a ray and 10 kg a shark.
  const hours = (litres: number) => {
    const lagoon = aloneIn(20, [lagoonAir], profileWith({ quantity: 'oxygen', below: 3 }), {
      kind: 'ray',
      tanks: [tank({ ...PLAIN, volumeL: litres, surfaceM2: litres / 1000, cover: 'open' })],
      stock: [
        stock({ count: 18, eachG: 8000, profile: 'exact' }),
        stock({ key: 'sharks', count: 3, eachG: 10_000, profile: 'exact' }),
      ],
    });
    return timeTo(befallen(lagoon, 'circuit-trips', { hours: 24, at: 22, fresh: true }, 'heat'), 'oxygen') / HOUR;
  };
  const lagoonAir = circulationPump({ circuit: 'heat', gasTransferLPerH: 100_000, ratedW: 1500 });

  test('is under 3 mg/L within the eight hours of the night from about 3 kg/m³ on; at half of that it would not have been', () => {
    expect(hours(60_000)).toBeLessThan(8);
    expect(hours(60_000)).toBeGreaterThan(4);
    expect(hours(150_000)).toBeGreaterThan(8);
  });
});
