import { together } from '#core/calibration/combine';
import type { Lump } from '#core/calibration/cooling-curve';
import { runsWithin, type Stretch } from '#core/calibration/stretch';
import { fitCooling } from '#server/calibration/fit-cooling';
import { fitCurve } from '#server/calibration/fit-curve';
import { lumpTemperature } from '#core/water/cooling';
import { describe, expect, test } from 'vitest';
import { randomOf, type Random } from '../../../seed/past/random';

const STEP_MS = 300_000;
const CAPACITY = 1.7694e6;
const LOSS = 40;
const lump: Lump = {
  heatCapacity: CAPACITY,
  evaporation: 0,
  vapourFactor: 1,
  powerAt: () => 30,
  roomAt: () => ({ temperature: 20, vapour: 0 }),
};

interface Probe {
  noise: number;
  step: number;
  lagS: number;
  /** Part of the readings that never came. */
  lost: number;
}

/** What a probe shows of one night by the closed form, which the fit does not use; its first quarter of an hour is left out. */
function night(at: number, { noise, step, lagS, lost }: Probe, random: Random, loss = LOSS): Stretch {
  const points = [];
  let felt = Number.NaN;
  for (let i = 0; i < 60; i++) {
    const is = lumpTemperature(26, 20, 30, CAPACITY, loss, i * 300);
    felt = Number.isNaN(felt) || lagS === 0 ? is : is + (felt - is) * Math.exp(-300 / lagS);
    const shown = Math.round((felt + noise * random.normal()) / step) * step;
    if (i * STEP_MS >= 3 * lagS * 1000 && !random.happens(lost)) points.push({ atMs: at + i * STEP_MS, value: shown });
  }
  return { key: `night-${at}`, fromMs: at, toMs: at + 60 * STEP_MS, points };
}

const PROBES: [string, Probe][] = [
  ['an even one', { noise: 0.02, step: 0.01, lagS: 0, lost: 0 }],
  ['one that comes late and with gaps', { noise: 0.03, step: 0.01, lagS: 300, lost: 0.3 }],
  ['one in steps of a tenth', { noise: 0.03, step: 0.1, lagS: 120, lost: 0.1 }],
];

describe('the heat loss of a night', () => {
  test.each(PROBES)(
    'is found again from the readings of %s, within its interval nineteen times in twenty',
    (name, probe) => {
      const random = randomOf('calibration', name);
      let within = 0;
      const runs = 40;
      for (let run = 0; run < runs; run++) {
        const said = [0, 1, 2, 3].map((n) => {
          const fit = fitCooling(night(n * 86_400_000, probe, random), lump, 25);
          return { value: fit?.parameters[0] ?? 0, error: fit?.errors[0] ?? 0, freedom: fit?.freedom ?? 1 };
        });
        const { value, half } = together(said);
        expect(Math.abs(value - LOSS)).toBeLessThan(4);
        if (Math.abs(value - LOSS) <= half) within += 1;
      }
      // 95 % of 40 is 38, with a standard deviation of 1.4; an interval of steps is wider than it need be.
      expect(within).toBeGreaterThanOrEqual(34);
    },
  );

  test('that differ from each other are told with an interval that holds the mean of many', () => {
    const random = randomOf('calibration', 'between');
    let within = 0;
    for (let run = 0; run < 40; run++) {
      const said = [0, 1, 2, 3, 4].map((n) => {
        const stretch = night(n * 86_400_000, PROBES[0]?.[1] as Probe, random, LOSS + 4 * random.normal());
        const fit = fitCooling(stretch, lump, 25);
        return { value: fit?.parameters[0] ?? 0, error: fit?.errors[0] ?? 0, freedom: fit?.freedom ?? 1 };
      });
      const { value, half } = together(said);
      if (Math.abs(value - LOSS) <= half) within += 1;
    }
    expect(within).toBeGreaterThanOrEqual(34);
  });

  test('has an error that grows with the noise', () => {
    const of = (noise: number) =>
      fitCooling(night(0, { noise, step: 0.001, lagS: 0, lost: 0 }, randomOf('calibration', 'noise')), lump, 25)
        ?.errors[0] ?? 0;
    expect(of(0.1) / of(0.02)).toBeGreaterThan(3);
    expect(of(0.1) / of(0.02)).toBeLessThan(7);
  });
});

test('a search says nothing where the readings cannot tell two parameters apart', () => {
  const values = [1, 2.01, 2.99, 4.02, 5];
  const at = ([a = 0, b = 0]: readonly number[]) => values.map((_, i) => (a + b) * (i + 1));
  expect(fitCurve({ values, at, starts: [0.4, 0.4], least: [0, 0], most: [9, 9], leastSd: 0 })).toBeNull();
});

test('a search finds what a polynomial was made of, from far away', () => {
  const xs = Array.from({ length: 21 }, (_, i) => i / 2);
  const values = xs.map((x) => 3 + 2 * x - 0.25 * x * x);
  const at = ([a = 0, b = 0, c = 0]: readonly number[]) => xs.map((x) => a + b * x + c * x * x);
  const found = fitCurve({ values, at, starts: [1, 1, -1], least: [-99, -99, -99], most: [99, 99, 99], leastSd: 1e-6 });
  expect(found?.parameters.map((p) => Number(p.toFixed(6)))).toEqual([3, 2, -0.25]);
});

test('readings are parted where some are missing', () => {
  const points = [0, 1, 2, 9, 10].map((i) => ({ atMs: i * STEP_MS, value: i }));
  expect(runsWithin(points, { fromMs: 0, toMs: 10 * STEP_MS }).map((run) => run.length)).toEqual([3, 2]);
});
