import { describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import type { Equipment } from '#core/facility/system';
import type { Side } from '#core/equipment/take';
import { OXYGEN } from '#core/simulate/plant';
import { respirationFactor } from '#core/water/respiration';
import {
  airBlower,
  circulationPump,
  heater,
  plan,
  returnPump,
  skimmer,
  thermostat,
} from '../../_support/build-equipment';
import { facility, room } from '../../_support/build-facility';
import { sensor, stock, sump, system, tank } from '../../_support/build-system';
import { courseOf, oxygen, profileWith, timeTo, volume } from './course';
import { ownHeater } from './plain';

const MINUTE = 60;
const HOUR = 3600;
const UNKNOWN = { lossWPerK: undefined, siphonBreakMm: undefined, siphonSafeguard: undefined };

describe('a 10 gallon reef, measured (reefkeeping.com, 2005-08, "The need to breathe", part 3)', () => {
  // How much breathed in it is not told: 220 g at 300 mg/kg·h and their bacteria are what stirring alone lets fall so far.
  const reef = (equipment: Equipment[]): Facility =>
    facility({
      rooms: [room({ temperatureC: 24 })],
      systems: [
        system({
          tanks: [tank({ ...UNKNOWN, volumeL: 38, surfaceM2: 0.13, cover: 'open' })],
          equipment: [ownHeater(100), ...equipment],
          sensors: [sensor({ key: 'display-temperature', tank: 'display' })],
          stock: [stock({ count: 22, eachG: 10, oxygenMgPerKgH: 300 })],
          alarms: [],
          states: [],
        }),
      ],
    });
  const stirring = circulationPump({ gasTransferLPerH: undefined, ratedW: 5 });
  const stone = (gasTransferLPerH?: number) => airBlower({ gasTransferLPerH, stones: [{ tank: 'display', count: 1 }] });

  /** Part of saturation after some hours, from a part at the start. */
  const laterPart = (equipment: Equipment[], from: number, hours: number): number => {
    let full = Number.NaN;
    const course = courseOf(reef(equipment), {
      hours,
      fresh: true,
      adjust: ({ initial }) => {
        full = (initial[OXYGEN] as number) / 0.95;
        initial[OXYGEN] = from * full;
      },
    });
    return oxygen(course, 'display') / full;
  };

  test('falls from 79 to between 10 and 20 % in a night of stirring alone; 16 % was measured', () => {
    const morning = laterPart([stirring], 0.787, 10);
    expect(morning).toBeGreaterThan(0.1);
    expect(morning).toBeLessThan(0.2);
  });

  test('comes from 51 to over 75 % in half an hour of one stone; 87 % was measured, inside what 40 to 250 L/h give', () => {
    expect(laterPart([stirring, stone()], 0.51, 0.5)).toBeGreaterThan(0.75);
    expect(laterPart([stirring, stone(40)], 0.51, 0.5)).toBeLessThan(0.87);
    expect(laterPart([stirring, stone(250)], 0.51, 0.5)).toBeGreaterThan(0.87);
  });

  test('stays near 80 % under a skimmer; 81 was the least measured, and the 130 by day is light, which is not modelled', () => {
    const held = laterPart(
      [stirring, skimmer({ tank: 'display', gasTransferLPerH: undefined, plan: plan() })],
      0.787,
      10,
    );
    expect(held).toBeGreaterThan(0.76);
    expect(held).toBeLessThan(1);
  });
});

describe('how long without air', () => {
  const still = (litres: number, area: number, kg: number, eachG: number, below: number, salt = 0): Facility =>
    facility({
      profiles: [profileWith({ quantity: 'oxygen', below })],
      systems: [
        system({
          salinity: salt,
          tanks: [tank({ ...UNKNOWN, volumeL: litres, surfaceM2: area })],
          equipment: [ownHeater(litres)],
          sensors: [sensor({ key: 'display-temperature', tank: 'display' })],
          stock: [stock({ count: (1000 * kg) / eachG, eachG, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });
  const minutes = (site: Facility, side: Side = 'nominal') =>
    timeTo(courseOf(site, { hours: 40, side, fresh: true }), 'oxygen') / MINUTE;

  test('food fish at 50 to 100 kg/m³ gasp after about 10 minutes (ndkayzambia.com): 15 to 7', () => {
    for (const [density, low, high] of [
      [50, 12, 18],
      [75, 8, 12],
      [100, 6, 9],
    ] as const) {
      const time = minutes(still(10_000, 8, 10 * density, 500, 3));
      expect(time).toBeGreaterThan(low);
      expect(time).toBeLessThan(high);
    }
  });

  test('a marine display of 1 to 2 kg/m³ has one and a half to four hours to 4 mg/L; four sources say one to four', () => {
    // life-aquatic.com "up to 2 h usually all right"; bestfish.com; rl180reef.com; enviroliteracy.org 2 to 4 h.
    for (const perM3 of [1, 2]) {
      const time = minutes(still(300, 0.6, 0.3 * perM3, 20, 4, 35));
      expect(time).toBeGreaterThan(90);
      expect(time).toBeLessThan(250);
      expect(minutes(still(300, 0.6, 0.3 * perM3, 20, 4, 35), 'warm')).toBeLessThan(time);
    }
  });

  test('the demand of 380 mg/kg·h measured in one marine tank lies inside our range, at its low end: ours is nominally twice that', () => {
    // R: researchgate.net/publication/236164547, 0.919 kg/m³ balanced by 0.351 mg/L·h.
    const perKg = (side: Side) => {
      const site = still(300, 0.6, 0.3, 10, 0);
      const { machine } = courseOf(site, { hours: 0.1, side, fresh: true });
      return ((machine.plant.respiration[0] as number) * respirationFactor(25) * 1000 * HOUR) / 0.3;
    };
    expect(perKg('nominal')).toBeGreaterThan(1.8 * 380);
    expect(perKg('nominal')).toBeLessThan(2.5 * 380);
    // Resting fish and their bacteria at the least: 283 · 1.2.
    expect((perKg('nominal') / 2 / 1.5) * 1.2).toBeLessThan(380);
  });
});

describe('evaporation of open reefs (salttankreport.com/reef-tank-evaporation-rate)', () => {
  const gallonsADay = (litres: number, area: number, below: number, belowArea: number, side: Side) => {
    const site = facility({
      rooms: [room({ temperatureC: 22, humidityPct: 50 })],
      systems: [
        system({
          tanks: [
            tank({ ...UNKNOWN, volumeL: litres, surfaceM2: area, cover: 'open' }),
            sump({ volumeL: below, surfaceM2: belowArea }),
          ],
          equipment: [
            returnPump(),
            heater({ ratedW: 400, plan: plan({ regulation: thermostat({ lowC: 25.3, highC: 25.7 }) }) }),
          ],
          alarms: [],
          states: [],
        }),
      ],
    });
    const course = courseOf(site, { hours: 24, side, fresh: true });
    const whole = (t: number) => volume(course, 'display', t) + volume(course, 'sump', t);
    return (1000 * (whole(0) - whole(24 * HOUR))) / 3.785;
  };

  test('is 1 to 1.5 gallons a day of 120, and about half a gallon of 50', () => {
    expect(gallonsADay(454, 0.74, 100, 0.35, 'nominal')).toBeGreaterThan(1);
    expect(gallonsADay(454, 0.74, 100, 0.35, 'nominal')).toBeLessThan(1.5);
    expect(gallonsADay(454, 0.74, 100, 0.35, 'cold')).toBeGreaterThan(1.5);
    expect(gallonsADay(454, 0.74, 100, 0.35, 'warm')).toBeLessThan(1);
    expect(Math.abs(gallonsADay(189, 0.37, 60, 0.2, 'nominal') - 0.5)).toBeLessThan(0.1);
  });
});
