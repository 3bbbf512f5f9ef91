import { describe, expect, test } from 'vitest';
import type { Machine } from '#core/simulate/machine';
import { OXYGEN_FADE } from '#core/simulate/rates';
import { concentrationByEvaporation } from '#core/water/concentration-by-evaporation';
import { lumpTemperature } from '#core/water/cooling';
import { dilutionRising } from '#core/water/dilution-rising';
import { GRAVITY } from '#core/water/drain-rate';
import { drainTime } from '#core/water/drain-time';
import { evaporation } from '#core/water/evaporation';
import { gasTransferFactor } from '#core/water/gas-transfer';
import { hypoxiaTime } from '#core/water/hypoxia-time';
import { oxygenSaturation } from '#core/water/oxygen-saturation';
import { respirationFactor } from '#core/water/respiration';
import { timeToLimit } from '#core/water/time-to-limit';
import { vapourPressure } from '#core/water/vapour-pressure';
import { drainValve, levelControl, plan, topOff } from '../../_support/build-equipment';
import { type Course, courseOf, oxygen, profileWith, salinity, temperature, TIGHT, timeTo, volume } from './course';
import { aloneIn, off, ownHeater, sealed } from './plain';

const HOUR = 3600;
const NEAR = 1e-6;
const tight = { options: { tolerance: TIGHT }, fresh: true };

/** Times of all knots but the first, s. */
function knotTimes({ record }: Course): number[] {
  return Array.from({ length: record.knots.length }, (_, i) => record.knots.time(i)).filter((t) => t > 0);
}

/** W/K and J/K of the only tank. */
function lump({ plant }: Machine): { loss: number; capacity: number } {
  return { loss: plant.lossWPerK[0] as number, capacity: plant.heatCapacity * (plant.runVolume[0] as number) };
}

function dry(machine: Machine): void {
  machine.plant.evaporationWPerPa.fill(0);
}

describe('one lump of water that does not evaporate', () => {
  test('cools after the heater is lost as e to the minus t over tau', () => {
    const course = courseOf(aloneIn(18, [ownHeater(300)]), {
      ...tight,
      hours: 40,
      fault: (upset) => upset.health.set('heater-1', 'dead'),
      adjust: dry,
    });
    const { loss, capacity } = lump(course.machine);
    for (const t of knotTimes(course))
      expect(off(temperature(course, 'display', t), lumpTemperature(25, 18, 0, capacity, loss, t))).toBeLessThan(NEAR);
  });

  test('reaches a low limit when the closed form says', () => {
    const course = courseOf(aloneIn(18, [ownHeater(300)], profileWith({ quantity: 'temperature', below: 20 })), {
      ...tight,
      hours: 80,
      fault: (upset) => upset.health.set('heater-1', 'dead'),
      adjust: dry,
    });
    const { loss, capacity } = lump(course.machine);
    expect(off(timeTo(course, 'temperature'), timeToLimit(25, 18, 0, capacity, loss, 20))).toBeLessThan(NEAR);
  });

  test.each([150, 400])('with %i W stuck on, reaches a high limit when the closed form says', (watts) => {
    const course = courseOf(aloneIn(22, [ownHeater(watts)], profileWith({ quantity: 'temperature', above: 28 })), {
      ...tight,
      hours: 80,
      fault: (upset) => upset.health.set('heater-1', 'stuck-on'),
      adjust: dry,
    });
    const { loss, capacity } = lump(course.machine);
    expect(off(timeTo(course, 'temperature'), timeToLimit(25, 22, watts, capacity, loss, 28))).toBeLessThan(NEAR);
  });

  test('never reaches a limit above room plus power over loss, and rests there', () => {
    const course = courseOf(aloneIn(22, [ownHeater(55)], profileWith({ quantity: 'temperature', above: 27 })), {
      ...tight,
      hours: 1000,
      fault: (upset) => upset.health.set('heater-1', 'stuck-on'),
      adjust: dry,
    });
    const { loss } = lump(course.machine);
    expect(22 + 55 / loss).toBeLessThan(27);
    expect(timeTo(course, 'temperature')).toBe(Number.POSITIVE_INFINITY);
    expect(off(temperature(course, 'display'), 22 + 55 / loss)).toBeLessThan(NEAR);
  });
});

describe('salinity', () => {
  test('falls as S0·V/(V + Q·t) while a top-off is stuck on', () => {
    const valve = topOff({
      tank: 'display',
      source: 'mains',
      flowLPerH: 7,
      plan: plan({ regulation: levelControl({ sensor: 'display-level', runLimitMin: undefined }) }),
    });
    const course = courseOf(aloneIn(25, [valve], profileWith({ quantity: 'salinity', below: 34.5 })), {
      ...tight,
      hours: 4,
      fault: (upset) => upset.probes.set('display-level', { as: 'stuck', value: -1000 }),
      adjust: sealed,
    });
    const added = (t: number) => (0.007 * t) / HOUR;
    for (const t of knotTimes(course))
      expect(off(salinity(course, 'display', t), dilutionRising(35, 0, 0.4, added(t)))).toBeLessThan(NEAR);
    // 35·400/(400 + Q·t) = 34.5.
    expect(off(timeTo(course, 'salinity'), (0.4 * (35 / 34.5 - 1) * HOUR) / 0.007)).toBeLessThan(NEAR);
  });

  test('rises as S0·V/(V − E·t) while water evaporates at a steady temperature', () => {
    const course = courseOf(aloneIn(20, [ownHeater(1)], profileWith({ quantity: 'salinity', above: 36 })), {
      ...tight,
      hours: 900,
      fault: (upset) => upset.health.set('heater-1', 'stuck-on'),
      adjust: (machine) => {
        machine.plant.lossWPerK.fill(0);
        // Just the heat that evaporation takes, so that the temperature stays and with it the evaporation.
        const k = machine.plant.evaporationWPerPa[0] as number;
        const [heaterOnly] = machine.devices;
        const air = machine.room.vapour[0] as number;
        if (heaterOnly) heaterOnly.watts = k * (machine.plant.vapourFactor * vapourPressure(25) - air);
      },
    });
    const { plant, room } = course.machine;
    const kgPerS = evaporation(25, 35, room.vapour[0] as number, plant.evaporationWPerPa[0] as number);
    const rate = kgPerS / plant.density;
    for (const t of knotTimes(course)) {
      expect(off(temperature(course, 'display', t), 25)).toBeLessThan(NEAR);
      expect(off(salinity(course, 'display', t), concentrationByEvaporation(35, 0.4, rate * t))).toBeLessThan(NEAR);
    }
    expect(off(timeTo(course, 'salinity'), (0.4 * (1 - 35 / 36)) / rate)).toBeLessThan(NEAR);
  });
});

describe('oxygen', () => {
  const limit = profileWith({ quantity: 'oxygen', below: 3 });
  const breathing = (transferPerS: number, demand: number) => (machine: Machine) => {
    sealed(machine);
    const whole = machine.plant.runVolume[0] as number;
    machine.plant.respiration[0] = (demand * whole) / respirationFactor(25);
    machine.stillGas[0] = (transferPerS * whole) / gasTransferFactor(25);
  };
  const start = 0.95 * oxygenSaturation(25, 35, 1);

  /** The closed form, and the little that the fading of uptake near nothing adds to it where no air comes in. */
  const fading = (from: number, to: number, demand: number) => (OXYGEN_FADE * (1 / to - 1 / from)) / demand;

  test('falls to hypoxia in (C0 − C)/r where no air comes in', () => {
    const demand = 2 / HOUR;
    const course = courseOf(aloneIn(25, [], limit), { ...tight, hours: 10, adjust: breathing(0, demand) });
    const from = oxygen(course, 'display', 0);
    const closed = hypoxiaTime(from, 3, 0, 0, demand);
    expect(off(timeTo(course, 'oxygen'), closed + fading(from, 3, demand))).toBeLessThan(NEAR);
    expect(off(timeTo(course, 'oxygen'), closed)).toBeLessThan(1e-3);
    expect(off(from, start)).toBeLessThan(1e-3);
  });

  test('comes back towards saturation as e to the minus kLa·t where nothing breathes', () => {
    const k = 0.7 / HOUR;
    const course = courseOf(aloneIn(25, []), {
      ...tight,
      hours: 6,
      adjust: (machine) => {
        breathing(k, 0)(machine);
        machine.initial[3] = 1;
      },
    });
    const full = oxygenSaturation(25, 35, course.machine.plant.pressureAtm);
    for (const t of knotTimes(course))
      expect(off(oxygen(course, 'display', t), full + (1 - full) * Math.exp(-k * t))).toBeLessThan(NEAR);
  });

  test('takes as long to hypoxia against a weak transfer as the law says, within the fading of uptake', () => {
    const [k, demand] = [0.2 / HOUR, 2 / HOUR];
    const course = courseOf(aloneIn(25, [], limit), { ...tight, hours: 20, adjust: breathing(k, demand) });
    const full = oxygenSaturation(25, 35, course.machine.plant.pressureAtm);
    const closed = hypoxiaTime(oxygen(course, 'display', 0), 3, full, k, demand);
    expect(timeTo(course, 'oxygen')).toBeGreaterThan(closed);
    expect(off(timeTo(course, 'oxygen'), closed)).toBeLessThan(2e-3);
  });
});

describe('an open waste', () => {
  test("drains by Torricelli's closed form down to its outlet, and no further", () => {
    const valve = drainValve({ tank: 'display', wasteLPerH: 900, wasteToMm: 300 });
    const course = courseOf(aloneIn(25, [valve]), {
      ...tight,
      hours: 3,
      fault: (upset) => upset.openWaste.add('drain-valve'),
      adjust: sealed,
    });
    // Opening and coefficient that give 900 L/h under the whole head of 0.3 m.
    const opening = 900 / 3.6e6 / Math.sqrt(2 * GRAVITY * 0.3);
    const head = (t: number) => (volume(course, 'display', t) - (0.4 - 0.8 * 0.3)) / 0.8;
    const falling = knotTimes(course).filter((t) => head(t) > 0.3 * 1.1e-3);
    expect(falling.length).toBeGreaterThan(10);
    for (const t of falling) expect(off(drainTime(0.8, 1, opening, 0.3, head(t)), t)).toBeLessThan(NEAR);
    // What drains takes its salt along: the salinity of what is left does not change.
    expect(off(salinity(course, 'display'), 35)).toBeLessThan(NEAR);
    expect(Math.abs(head(3 * HOUR))).toBeLessThan(1e-4);
  });
});
