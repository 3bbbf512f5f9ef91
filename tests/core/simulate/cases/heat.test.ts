import { describe, expect, test } from 'vitest';
import type { Facility } from '#core/facility/facility';
import { density } from '#core/water/density';
import { heatCapacity } from '#core/water/heat-capacity';
import { chiller, cutOut, heater, plan, thermostat } from '../../../_support/build-equipment';
import { facility, room } from '../../../_support/build-facility';
import { sensor, stock, system, tank } from '../../../_support/build-system';
import { courseOf, profileWith, temperature, timeTo } from '../course';
import { aloneIn, ownHeater } from '../plain';
import { befallen, between, fahrenheit } from './case-support';

// Each case with what was told of it and where; a figure nobody gave is a range, and the case has to lie in it.

const HOUR = 3600;
const UNKNOWN = { lossWPerK: undefined, siphonBreakMm: undefined, siphonSafeguard: undefined };

describe('a touch pool of 16,000 gallons, 18 inches deep, 79 to 89 °F between two rounds (oceansentry.org; chicagotribune.com, 2008-07-18)', () => {
  // Seen well at 03:00, found between 07:00 and 08:00: four to five hours. Which power did it nobody wrote down.
  const [from, to] = [fahrenheit(79), fahrenheit(89)];
  const pool = (watts: number, cutOutAt?: number): Facility =>
    aloneIn(
      26,
      [
        heater({
          tank: 'display',
          ratedW: watts,
          plan: plan({
            cutOuts: cutOutAt === undefined ? [] : [cutOut({ tank: 'display', above: cutOutAt })],
            regulation: thermostat({ sensors: ['display-temperature'], lowC: from - 0.1, highC: from + 0.1 }),
          }),
        }),
      ],
      profileWith({ quantity: 'temperature', above: to }),
      {
        salinity: { value: 35, origin: 'entered' },
        tanks: [tank({ ...UNKNOWN, volumeL: 60_600, surfaceM2: 132, cover: 'open' })],
      },
    );
  const hours = (watts: number) =>
    timeTo(befallen(pool(watts), 'heater-on', { hours: 12, fresh: true }), 'temperature') / HOUR;

  test('takes plant: 78 to 98 kW net by the figures, and the upper end of that alone does it in the time; a heater of 50 kW does not in a night', () => {
    expect(hours(50_000)).toBe(Number.POSITIVE_INFINITY);
    expect(hours(98_000)).toBeGreaterThan(4);
    expect(hours(98_000)).toBeLessThan(5);
    // What 132 m² of open water give off on the way up comes on top of the net figure: at its lower end it takes longer.
    expect(hours(78_000)).toBeGreaterThan(5);
    expect(hours(78_000)).toBeLessThan(7);
  });

  test('a cut-out 1.5 K above would have opened within an hour and a half, and kept it below 89 °F', () => {
    const course = befallen(pool(110_000, from + 1.5), 'heater-on', { hours: 12, fresh: true });
    expect(timeTo(course, 'temperature')).toBe(Number.POSITIVE_INFINITY);
    expect(course.record.acted.has('heater-1-cut-out')).toBe(true);
    expect(temperature(course, 'display', 1.5 * HOUR)).toBeGreaterThan(from + 1.2);
  });
});

describe('one million litres at 24 °C said to fall by a degree an hour (news.bbc.co.uk 6186157)', () => {
  const cooling = (litres: number, area: number) => {
    const site = aloneIn(5, [ownHeater(1e6, { lowC: 23.9, highC: 24.1 })], profileWith(), {
      tanks: [tank({ ...UNKNOWN, volumeL: litres, surfaceM2: area, cover: 'open' })],
    });
    const course = befallen(site, 'heater-off', { hours: 2, side: 'cold', fresh: true });
    return (temperature(course, 'display', 0) - temperature(course, 'display', 2 * HOUR)) / 2;
  };

  test('would be 1.16 MW lost, and the model refuses it for that tank, even open in a room of 5 °C on the bad side of every range', () => {
    const watts = (density(24, 35) * heatCapacity(24, 35) * 1000) / HOUR;
    expect(watts / 1e6).toBeGreaterThan(1.1);
    expect(watts / 1e6).toBeLessThan(1.2);
    expect(cooling(1_000_000, 250)).toBeLessThan(1 / 5);
  });

  test('it can be true of the small tanks of the same house', () => {
    expect(cooling(20, 0.12)).toBeGreaterThan(1);
  });
});

describe('a small aquarium in a heat wave, tanks 3 °C up, saved by borrowed chillers (practicalfishkeeping.co.uk, brewery)', () => {
  test('the cooling needed is heat loss times the warmth of the air above the water, and the gains: less of it leaves the water 3 K up', () => {
    const loss = 20;
    const gains = 200;
    const at = (coolingW: number) => {
      const cold = chiller({ tank: 'display', coolingW, ratedW: 1, heatToWater: 0 });
      const site = aloneIn(30, [
        {
          ...cold,
          plan: plan({ regulation: thermostat({ sensors: ['display-temperature'], lowC: 23.9, highC: 24 }) }),
        },
        ownHeater(gains, { lowC: 60, highC: 61 }),
      ]);
      const course = courseOf(site, {
        hours: 400,
        fresh: true,
        fault: (upset) => upset.health.set('heater-1', 'stuck-on'),
        adjust: ({ plant }) => {
          plant.evaporationWPerPa.fill(0);
          plant.lossWPerK.fill(loss);
        },
      });
      return temperature(course, 'display');
    };
    const needed = loss * (30 - 24) + gains;
    expect(at(needed + 40)).toBeLessThan(24.1);
    expect(at(needed - 3 * loss)).toBeCloseTo(27, 1);
  });
});

describe('about 130 tropical fish in an insulated shed, two days without power in the snow (shetnews.co.uk, 2022-12-22)', () => {
  // Sizes not told: 0.02 to 0.05 W per litre and kelvin, the shed falling to about 5 °C.
  const below18 = (wattsPerLitre: number) => {
    const site = aloneIn(5, [ownHeater(400)], profileWith({ quantity: 'temperature', below: 18 }), {
      tanks: [
        tank({
          volumeL: 100,
          surfaceM2: 0.3,
          siphonBreakMm: undefined,
          siphonSafeguard: undefined,
          cover: 'lidded',
          lossWPerK: 100 * wattsPerLitre,
        }),
      ],
    });
    return timeTo(befallen(site, 'heater-off', { hours: 48, fresh: true }), 'temperature') / HOUR;
  };

  test('is below 18 °C after 8 to 17 hours, and so for the most of the two days: cold is slow, and there were hours', () => {
    expect(below18(0.05)).toBeGreaterThan(7);
    expect(below18(0.02)).toBeLessThan(18);
  });
});

describe('a reef set to 26 °C, found at 33 °C in the morning (practicalfishkeeping.co.uk, how to stop a tank from overheating)', () => {
  // Neither volume nor watts told; a room of 20 to 24 °C, a night of 8 to 12 hours.
  const hours = (wattsPerLitre: number) => {
    const site = facility({
      profiles: [profileWith({ quantity: 'temperature', above: 33 })],
      rooms: [room({ temperatureC: between(20, 24), humidityPct: 55 })],
      systems: [
        system({
          tanks: [tank({ ...UNKNOWN, volumeL: 200, surfaceM2: 0.5, cover: 'lidded' })],
          equipment: [ownHeater(200 * wattsPerLitre, { lowC: 25.9, highC: 26.1 })],
          sensors: [sensor({ key: 'display-temperature', tank: 'display' })],
          stock: [stock({ count: 1, profile: 'exact' })],
          alarms: [],
          states: [],
        }),
      ],
    });
    return timeTo(befallen(site, 'heater-on', { hours: 60, fresh: true }), 'temperature') / HOUR;
  };

  test('one night suffices from about one and a half watts per litre; one watt per litre takes longer than the night', () => {
    expect(hours(2)).toBeLessThan(8);
    expect(hours(1.5)).toBeLessThan(12);
    expect(hours(1)).toBeGreaterThan(12);
  });
});
