import { coolingStretches } from '#core/calibration/heater-off';
import { fallsOf } from '#core/calibration/falling';
import { oxygenAfter } from '#core/calibration/oxygen-curve';
import { oxygenStretches } from '#core/calibration/oxygen-stretches';
import { spansOf, stopsOf, wattsFrom } from '#core/calibration/switched';
import { usedByLevel, usedByRounds } from '#core/calibration/used';
import type { System } from '#core/facility/system';
import { describe, expect, test } from 'vitest';
import { airBlower, heater, plan, thermostat } from '../../_support/build-equipment';
import { system } from '../../_support/build-system';

const MIN = 60_000;
const HOUR = 60 * MIN;
const clockS = (atMs: number) => (atMs / 1000) % 86_400;
const keys = new Set(['display', 'sump']);
const every = (stepMin: number, hours: number, value: (h: number) => number, fromMs = 0) =>
  Array.from({ length: (hours * 60) / stepMin + 1 }, (_, i) => ({
    atMs: fromMs + i * stepMin * MIN,
    value: value((i * stepMin) / 60),
  }));
const lit = (from: string, to: string) => ({
  ...heater({ key: 'lamp', type: 'light', name: 'Lamp', tank: 'display' }),
  plan: plan({ regulation: { kind: 'hours', from, to, by: 'controller' } }),
});
const withEquipment = (...equipment: System['equipment']): System => ({ ...system(), equipment });

describe('power that was read', () => {
  const watts = wattsFrom(every(5, 4, (h) => (h >= 1 && h < 2 ? 0.3 : 150)));
  test('tells when a piece was off, from the first reading to the last that say so', () => {
    expect(spansOf(watts, 'off')).toEqual([{ fromMs: HOUR, toMs: 2 * HOUR - 5 * MIN }]);
    expect(stopsOf(watts)).toHaveLength(1);
  });
  test('says nothing over a gap of hours', () => {
    const far = wattsFrom([0, 10, 200, 210].map((min) => ({ atMs: min * MIN, value: 0 })));
    expect(spansOf(far, 'off').map(({ fromMs, toMs }) => (toMs - fromMs) / MIN)).toEqual([10, 10]);
  });
});

describe('nights in which the water cooled by itself', () => {
  const evening = 21 * HOUR;
  const temperature = every(10, 4, (h) => 25 - 0.1 * h, evening);
  const lagS = 300;
  const off = new Map([['heater-1', wattsFrom(every(5, 4, () => 0.3, evening))]]);
  const found = (of: System, watts = off, points = temperature) =>
    coolingStretches(of, keys, { temperature: points, watts, lagS }, clockS);

  test('are found where the heater drew nothing, without the minutes in which the probe was late', () => {
    const { stretches, by } = found(withEquipment(heater()));
    expect(by).toBe('watts');
    expect(stretches.map(({ fromMs, toMs }) => [fromMs, toMs])).toEqual([[evening + 20 * MIN, evening + 4 * HOUR]]);
  });

  test('are not found by day, nor while a lamp is on', () => {
    expect(
      found(
        withEquipment(heater()),
        off,
        every(10, 4, (h) => 25 - 0.1 * h, 12 * HOUR),
      ).stretches,
    ).toEqual([]);
    const late = found(withEquipment(heater(), lit('09:00', '23:00')));
    expect(late.stretches.map(({ fromMs }) => fromMs)).toEqual([23 * HOUR + 20 * MIN]);
  });

  test('are given up when a pump was switched meanwhile, and that is counted', () => {
    const watts = new Map([...off, ['air', wattsFrom(every(5, 4, (h) => (h < 2 ? 12 : 0), evening))]]);
    const { stretches, switched } = found(withEquipment(heater(), airBlower({ key: 'air', tank: 'display' })), watts);
    expect([stretches.length, switched]).toEqual([0, 1]);
  });

  test('are told by the plans where no power is read: from above where the heater goes off to above where it comes on', () => {
    const cycling = every(10, 6, (h) => 25 - 0.4 * Math.abs(((h / 4) % 1) * 2 - 1), evening);
    const band = { lowC: 24.6, highC: 25 };
    const own = withEquipment(heater({ plan: plan({ regulation: thermostat(band) }) }));
    const { stretches, by } = found(own, new Map(), cycling);
    expect(by).toBe('plan');
    expect(stretches.length).toBeGreaterThan(0);
    for (const { points } of stretches) expect(points[0]?.value).toBeGreaterThan(points.at(-1)?.value ?? 0);
    const weak = withEquipment(heater({ plan: plan({ regulation: thermostat({ lowC: 26, highC: 26.4 }) }) }));
    expect(found(weak, new Map(), cycling).stretches).toEqual([]);
  });
});

test('a fall is told from crest to trough, whatever trembles on the way', () => {
  const points = every(
    10,
    6,
    (h) => (h < 2 ? 24 + h / 2 : h < 4 ? 25 - (h - 2) / 2 : 24 + (h - 4) / 2) + (h % 1 > 0.4 ? 0.02 : 0),
  );
  const [fall, ...rest] = fallsOf(points);
  expect(rest).toEqual([]);
  expect((fall?.fromMs ?? 0) / HOUR).toBeCloseTo(2, 0);
  expect((fall?.toMs ?? 0) / HOUR).toBeCloseTo(4, 0);
});

describe('oxygen', () => {
  test('comes from 51 to 87 % of saturation in half an hour at 2.7 an hour', () => {
    // One air stone in a 38 L reef: reefkeeping.com, 2005-08, "The need to breathe", part 3. Without use this is a floor.
    expect(oxygenAfter({ transferPerH: 2.7, usePerH: 0, start: 51 }, 100, 0.5)).toBeCloseTo(87, 0);
    expect(Math.log((100 - 51) / (100 - 87)) / 0.5).toBeCloseTo(2.65, 2);
  });

  test.each([
    [0, 1.75],
    [0.05, 1.84438],
    [0.5, 5.57217],
  ])(
    'reaches 3 mg/L as the law of the time to hypoxia has it (worked out beside it, a regression), with a transfer of %d per hour',
    (transferPerH, hours) => {
      expect(oxygenAfter({ transferPerH, usePerH: 2, start: 6.5 }, 6.77, hours)).toBeCloseTo(3, 4);
    },
  );

  test('is followed after lamps went out, and while something stood', () => {
    const oxygen = every(5, 30, () => 7);
    const watts = new Map([['air', wattsFrom(every(5, 30, (h) => (h >= 2 && h < 3 ? 0 : 12)))]]);
    const own = withEquipment(airBlower({ key: 'air', name: 'Air', tank: 'display' }), lit('09:00', '19:00'));
    const found = oxygenStretches(own, keys, { oxygen, watts, lagS: 60 }, clockS);
    expect(found.map(({ why, by, fromMs }) => [why, by, Math.floor(fromMs / HOUR)])).toEqual([
      ['lights-out', 'Lamp', 19],
      ['stopped', 'Air', 2],
      ['started-again', 'Air', 3],
    ]);
  });
});

describe('water that was used', () => {
  test('is counted from one look to the next, where they lie no more than two and a half days apart', () => {
    const noted = [0, 12, 24, 100, 112].map((h) => ({ atMs: h * HOUR, litres: 3 }));
    expect(usedByRounds(noted).map(({ fromMs, toMs }) => [fromMs / HOUR, toMs / HOUR])).toEqual([
      [0, 12],
      [12, 24],
      [100, 112],
    ]);
  });

  test('is what leaves a reservoir between two fillings', () => {
    const level = every(30, 48, (h) => 300 - 4 * (h % 24));
    const uses = usedByLevel(level, 0.25);
    expect(uses.map(({ litres }) => litres)).toEqual([23.5, 23.5]);
  });
});
