import fc from 'fast-check';
import psychrolib from 'psychrolib';
import { describe, expect, test } from 'vitest';
import { toCubicMetres } from '#core/units/volume';
import { evaporation, evaporationHeat, evaporationHeatSlope, evaporationSlope } from '#core/water/evaporation';
import { CALM, evaporationTransfer } from '#core/water/evaporation-transfer';
import { latentHeat } from '#core/water/latent-heat';
import { slopeOf } from './numerics';
import { argument, cases, miss } from './reference';

psychrolib.SetUnitSystem(psychrolib.SI);

/** kg/m²h by the law in its textbook shape, built from psychrolib's pressures. */
function textbook(water: number, air: number, humidity: number, speed: number): number {
  const pw = psychrolib.GetSatVapPres(water) / 1000;
  const pa = psychrolib.GetVapPresFromRelHum(air, humidity) / 1000;
  return (3600 * (pw - pa) * (0.089 + 0.0782 * speed)) / (2501 - 2.37 * water);
}

function ours(water: number, air: number, humidity: number, speed: number): number {
  const vapour = psychrolib.GetVapPresFromRelHum(air, humidity);
  return 3600 * evaporation(water, 0, vapour, evaporationTransfer(1, speed, 1));
}

// Btu/(h·ft²·inHg) in W/(m²·Pa), from the exact definitions of foot, pound and inch.
const INCH_POUND = 1055.05585262 / 3600 / 0.09290304 / 3386.388640341;

test.each(cases('evaporation-transfer'))('the inch-pound form of 1998: %s', (_name, row) => {
  const transfer = evaporationTransfer(1, (argument(row, 0) * 0.3048) / 60, 1);
  expect(miss(row, transfer / INCH_POUND)).toBeLessThanOrEqual(1);
});

test.each(cases('evaporation'))('other published forms: %s', (_name, row) => {
  const [water, air, humidity, speed, area] = [0, 1, 2, 3, 4].map((i) => argument(row, i)) as [
    number,
    number,
    number,
    number,
    number,
  ];
  const vapour = psychrolib.GetVapPresFromRelHum(air, humidity);
  expect(miss(row, evaporation(water, 0, vapour, evaporationTransfer(area, speed, 1)))).toBeLessThanOrEqual(1);
});

test('is the textbook form with psychrolib’s pressures, to 1e-6', () => {
  const state = fc.tuple(
    fc.double({ min: 5, max: 40, noNaN: true }),
    fc.double({ min: 5, max: 35, noNaN: true }),
    fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    fc.double({ min: 0, max: 2, noNaN: true }),
  );
  fc.assert(
    fc.property(state, ([water, air, humidity, speed]) => {
      const there = textbook(water, air, humidity, speed);
      return Math.abs(ours(water, air, humidity, speed) - there) <= 1e-6 * Math.abs(there) + 1e-9;
    }),
  );
});

test('a calm tank at 26 °C in a room of 22 °C and 50 % loses 3.5 mm a day', () => {
  const vapour = psychrolib.GetVapPresFromRelHum(22, 0.5);
  const perDay = 86_400 * evaporation(26, 0, vapour, evaporationTransfer(1, 0.1, CALM));
  expect(perDay / toCubicMetres(1, 'L') / 1000).toBeCloseTo(3.5, 1);
});

test('an independent method for calm pools agrees within 25 % while the air is cooler than the water', () => {
  // Shah 2002 (method: users.encs.concordia.ca, reference 002507; coefficients from memory).
  const shah: [number, number, number, number][] = [
    [26, 22, 0.5, 0.153],
    [25, 20, 0.4, 0.178],
  ];
  for (const [water, air, humidity, there] of shah) {
    expect(Math.abs((CALM * ours(water, air, humidity, 0.1)) / there - 1)).toBeLessThan(0.25);
  }
});

describe('heat and water', () => {
  const temperature = fc.double({ min: 0, max: 40, noNaN: true });
  const salinity = fc.double({ min: 0, max: 40, noNaN: true });
  const vapour = fc.double({ min: 0, max: 4000, noNaN: true });

  test('go together: the heat lost is the water lost times its latent heat', () => {
    fc.assert(
      fc.property(temperature, salinity, vapour, (t, s, pa) => {
        expect(evaporation(t, s, pa, 0.3) * latentHeat(t)).toBeCloseTo(evaporationHeat(t, s, pa, 0.3), 9);
      }),
    );
  });

  test('have the slopes they say they have, by central differences', () => {
    fc.assert(
      fc.property(temperature, salinity, vapour, (t, s, pa) => {
        const mass = slopeOf((x) => evaporation(x, s, pa, 0.3), t, 0.02);
        const heat = slopeOf((x) => evaporationHeat(x, s, pa, 0.3), t, 0.02);
        expect(evaporationSlope(t, s, pa, 0.3) / mass).toBeCloseTo(1, 7);
        expect(evaporationHeatSlope(t, s, 0.3) / heat).toBeCloseTo(1, 7);
      }),
    );
  });

  test('grow with warmer water, and shrink with salt and moist air', () => {
    fc.assert(
      fc.property(temperature, salinity, vapour, (t, s, pa) => {
        const here = evaporationHeat(t, s, pa, 0.3);
        return (
          evaporationHeat(t + 0.1, s, pa, 0.3) > here &&
          evaporationHeat(t, s + 0.1, pa, 0.3) < here &&
          evaporationHeat(t, s, pa + 1, 0.3) < here
        );
      }),
    );
  });

  test('turn round when the room is moister than the water’s own vapour: it condenses', () => {
    expect(evaporation(12, 0, psychrolib.GetVapPresFromRelHum(25, 0.7), 0.3)).toBeLessThan(0);
  });
});

test('2257 kJ/kg, used in one published example, would lose 8 % more water for the same heat', () => {
  const heat = evaporationHeat(25, 0, 1585, 44);
  expect(heat / 2.257e6 / evaporation(25, 0, 1585, 44)).toBeGreaterThan(1.08);
});

test('a tight lid stops it, and no input makes the surface give less than nothing', () => {
  expect(evaporationTransfer(2, 0.1, 0)).toBe(0);
  expect(evaporationTransfer(-2, 0.1, 1)).toBe(0);
  expect(evaporationTransfer(2, -5, 1)).toBe(evaporationTransfer(2, 0, 1));
});
