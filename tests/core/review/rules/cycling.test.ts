import type { ResolvedSystem } from '#core/equipment/resolved';
import type { Thermostat } from '#core/plans/plan';
import { example, withEquipment, withPlan, withSystem } from '#core/review/rules/example/example';
import { entered } from '#core/review/rules/example/proven';
import { startsAtHalfLoad, startsInBusiestHour } from '#core/review/rules/facts/cycling';
import { heatPerKelvin, numbersOf } from '#core/review/rules/facts/water';
import type { RuleContext } from '#core/review/rules/rule';
import type { Nominal } from '#core/simulate/nominal';
import { layoutOf } from '#core/simulate/layout';
import { emptyRecord } from '#core/simulate/world';
import { describe, expect, test } from 'vitest';
import { causes, finds } from './finds';
import { unknown } from '../../../_support/given';

const DAY = 86_400;

/** Starts an hour of a two-point control of mixed water under a constant load, counted step by step. */
function counted(heat: number, watts: number, load: number, width: number): number {
  const step = 0.05;
  let [above, on, starts, since, last] = [0, true, 0, 0, 0];
  for (let t = 0; starts < 4; t += step) {
    above += (((on ? watts : 0) - load) / heat) * step;
    if (on && above >= width) on = false;
    else if (!on && above <= 0) {
      on = true;
      starts++;
      if (starts === 1) since = t;
      last = t;
    }
  }
  return (3 * 3600) / (last - since);
}

function first(context: RuleContext, numbers: ResolvedSystem): { rate: number; heat: number; watts: number } {
  const [heater] = context.system.equipment;
  if (heater?.plan.regulation.kind !== 'thermostat') throw new Error('the example begins with a heater');
  const rate = startsAtHalfLoad(context, numbers, heater, heater.plan.regulation);
  return { rate, heat: heatPerKelvin(numbers, 0.552, 25.555), watts: 300 };
}

const both = (given: Partial<Thermostat>) =>
  ['heater-1', 'heater-2'].map((key) =>
    withPlan(key, ({ regulation }) =>
      regulation.kind === 'thermostat' ? { regulation: { ...regulation, ...given } } : {},
    ),
  );

describe('the closed form of two-point control', () => {
  const context = example(...both({ lowC: 25.5, highC: 25.51 }));
  const { rate, heat, watts } = first(context, numbersOf(context));

  test('agrees with counting, for both heaters of a band together, to one part in a hundred', () => {
    expect(rate).toBeGreaterThan(5);
    expect(counted(heat, watts, watts / 2, 0.01) / rate).toBeCloseTo(1, 2);
  });

  test('is the busiest of all loads', () => {
    for (const share of [0.05, 0.2, 0.4, 0.6, 0.8, 0.95])
      expect(counted(heat, watts, share * watts, 0.01)).toBeLessThan(rate);
  });

  test('never starts oftener than the shortest times let it', () => {
    const slow = example(...both({ lowC: 25.5, highC: 25.501, minOnS: 300, minOffS: 600 }));
    expect(first(slow, numbersOf(slow)).rate).toBeCloseTo(4, 9);
  });

  test('adds up only what shares a band: the second heater waits below it', () => {
    const apart = example(
      ...both({ lowC: 25.5, highC: 25.51 }),
      withPlan('heater-2', ({ regulation }) =>
        regulation.kind === 'thermostat' ? { regulation: { ...regulation, lowC: 25, highC: 25.01 } } : {},
      ),
    );
    expect(first(apart, numbersOf(apart)).rate / rate).toBeCloseTo(0.5, 9);
  });

  test('is not known where a figure is unknown, and then finds nothing', () => {
    const change = withEquipment('heater-1', { ratedW: unknown() });
    expect(first(example(change), numbersOf(example(change))).rate).toBeNaN();
    expect(causes('short-cycling', change)).toEqual([]);
  });
});

describe('the busiest hour of the last normal day', () => {
  const day = (times: number[], startsPerDay = [times.length]): Nominal => ({
    record: { ...emptyRecord(1), endS: 2 * DAY, switches: times.map((t) => ({ t, device: 0, on: true })) },
    at: () => ({
      x: new Float64Array(),
      layout: layoutOf(0, 0, 0),
      on: [],
      dayLow: new Float64Array(),
      dayHigh: new Float64Array(),
    }),
    restless: false,
    startsPerDay,
    acted: new Set(),
    dayLow: new Float64Array(),
    dayHigh: new Float64Array(),
  });

  test('is found wherever it begins, and the day before does not count', () => {
    const early = Array.from({ length: 20 }, (_, i) => 100 * i);
    const busy = Array.from({ length: 9 }, (_, i) => DAY + 5000 + 400 * i);
    expect(startsInBusiestHour(day([...early, ...busy, DAY + 40_000], [10]), 0)).toBe(9);
    expect(startsInBusiestHour(day([DAY + 1, DAY + 3601]), 0)).toBe(1);
    expect(startsInBusiestHour(day([DAY + 1, DAY + 3600]), 0)).toBe(2);
  });

  test('is never less than an even share of the starts of the day', () => {
    expect(startsInBusiestHour(day([], [240]), 0)).toBe(10);
    expect(startsInBusiestHour(day([]), 0)).toBe(0);
  });
});

test('a heater is also caught when only the model shows it, because its own small tank feels it first', () => {
  // Without a return the heater has the sump to itself, at less than half of its power.
  const alone = withSystem(({ equipment, tanks }) => ({
    equipment: equipment.filter(({ type }) => type !== 'return-pump' && type !== 'skimmer'),
    tanks: tanks.map((tank) =>
      tank.role === 'sump' ? { ...tank, volumeL: entered(20), surfaceM2: entered(0.07) } : tank,
    ),
  }));
  const [breach] = finds('short-cycling', alone, ...both({ lowC: 25.5, highC: 25.55 }));
  expect(breach?.consequence).toMatch(/^It starts \d+ times in the busiest hour of a normal day\.$/);
});
