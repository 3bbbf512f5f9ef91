import { describe, expect, test } from 'vitest';
import { resolveSystem } from '#core/equipment/resolve';
import type { Equipment, System } from '#core/facility/system';
import { constantsAt } from '#core/simulate/chemistry';
import type { Follower } from '#core/simulate/layout';
import { HALF_AMMONIA } from '#core/simulate/nitrify';
import { carbonDioxideShare, phAt } from '#core/water/carbonate-balance';
import { unionisedShare } from '#core/water/unionised-ammonia';
import { plan } from '../../_support/build-equipment';
import { entered } from '../../_support/given';
import { type Course, courseOf, onlySystem, profileWith, salinity, timeTo, TIGHT } from './course';
import { aloneIn, off, sealed } from './plain';

// Closed forms: what a mixed tank of constant volume does by itself.
const WATER = 0.4;
const DAY = 86_400;
const LIMIT = profileWith({ quantity: 'ammonia', above: 0.05 });

/** A follower's concentration in the only tank. */
function shown({ machine, record }: Course, name: Follower, t = record.endS): number {
  const from = machine.plant.layout.followers[name];
  if (from < 0) throw new Error(`${name} is not carried`);
  return record.knots.between(record.knots.before(t), from, t);
}

function alone(more: Partial<System>, equipment: Equipment[] = [], profile = LIMIT) {
  return aloneIn(25, equipment, profile, {
    feedGPerDay: entered(10),
    feedProtein: entered(0.5),
    ph: entered(8),
    ...more,
  });
}

const co2: Equipment = { key: 'co2', name: 'CO2', type: 'co2', tank: 'display', co2GPerH: entered(2), plan: plan() };
const ozone: Equipment = {
  key: 'o3',
  name: 'Ozone',
  type: 'ozone',
  tank: 'display',
  ozoneGPerH: entered(0.1),
  plan: plan(),
};

describe('ammonia', () => {
  test('that nothing turns over rises by what is given off, and reaches its limit when the closed form says', () => {
    const site = alone({});
    const course = courseOf(site, {
      hours: 72,
      fresh: true,
      options: { tolerance: TIGHT },
      adjust: (machine) => {
        sealed(machine);
        machine.bacteria = [];
      },
    });
    const { excretion, ammonia } = resolveSystem(site, onlySystem(site), 'nominal').chemistry;
    const perS = (excretion.get('display') ?? 0) / WATER;
    // 10 g of feed, half protein, 0.0922 of it nitrogen.
    expect(perS * WATER * DAY).toBeCloseTo(10 * 0.5 * 0.0922, 12);
    expect(off(shown(course, 'ammonia'), ammonia + 3 * DAY * perS)).toBeLessThan(1e-9);
    const { salinity, temperature } = resolveSystem(site, onlySystem(site), 'nominal');
    const share = unionisedShare(8, 'nbs', temperature, salinity);
    expect(timeTo(course, 'ammonia', 'above')).toBeCloseTo((0.05 / share - ammonia) / perS, 0);
  });

  test('falls by saturated bacteria as the integrated Monod law says: K·ln(N/N0) + N − N0 = −k·t', () => {
    const course = courseOf(alone({ feedGPerDay: entered(0.001) }), {
      hours: 1.5,
      fresh: true,
      fault: (upset) => {
        upset.feedDumpedG = 1e-9;
      },
      options: { tolerance: TIGHT },
      adjust: (machine) => {
        sealed(machine);
        const { plant } = machine;
        plant.chemistry.excretion.fill(0);
        machine.dumped = null;
        machine.bacteria = [{ node: 0, rate: 2e-4, needsReturn: false }];
        machine.initial[plant.layout.followers.ammonia] = 4;
      },
    });
    const t = course.record.endS;
    const [x] = [course.record.knots.stateAt(t)];
    const k = (2e-4 * 1.07 ** ((x[1] ?? 0) - 20) * ((x[3] ?? 0) / (0.5 + (x[3] ?? 0)))) / WATER;
    const n = shown(course, 'ammonia');
    expect(n).toBeLessThan(1);
    expect(off(HALF_AMMONIA * Math.log(4 / n) + 4 - n, k * t)).toBeLessThan(1e-8);
  });

  test('takes two mol of alkalinity for each mol of nitrogen turned over, whatever else goes on', () => {
    const course = courseOf(alone({}, [co2]), {
      hours: 30,
      adjust: (machine) => machine.plant.chemistry.alkalinityUse.fill(0),
    });
    const { plant } = course.machine;
    const water = (t: number) => course.record.knots.between(course.record.knots.before(t), 0, t);
    const given = (plant.chemistry.excretion[0] ?? 0) * course.record.endS;
    const mass = (name: Follower, t: number) => shown(course, name, t) * water(t);
    const turnedOver = given - (mass('ammonia', course.record.endS) - mass('ammonia', 0));
    const used = mass('alkalinity', 0) - mass('alkalinity', course.record.endS);
    expect(turnedOver).toBeGreaterThan(0.3);
    expect(off(used, (2 * turnedOver) / 14.0067)).toBeLessThan(1e-4);
  });
});

describe('carbon dioxide', () => {
  test('let in by force and given back to the air comes to rest where gas exchange carries the dose', () => {
    const gas = 5e-4;
    const course = courseOf(alone({ alkalinityMmolL: entered(2.5) }, [co2], profileWith()), {
      hours: 60,
      fresh: true,
      options: { tolerance: TIGHT },
      adjust: (machine) => {
        sealed(machine);
        machine.stillGas.fill(gas);
      },
    });
    const x = course.record.knots.stateAt(course.record.endS);
    const { plant } = course.machine;
    const constants = constantsAt(plant.chemistry, x[1] ?? 0, salinity(course, 'display'));
    const [alkalinity, carbon] = [shown(course, 'alkalinity'), shown(course, 'carbon')];
    const dissolved = carbon * carbonDioxideShare(constants, phAt(constants, alkalinity, carbon, 8));
    const speed = gas * 1.024 ** ((x[1] ?? 0) - 20) * 0.94;
    const air = plant.chemistry.airCarbonDioxide * (plant.pressureAtm - 3169 / 101_325) * constants.solubility;
    expect(off(dissolved - air, 2 / 3600 / 44.0095 / speed)).toBeLessThan(1e-3);
    expect(alkalinity).toBeCloseTo(2.5, 9);
  });

  test('breathed out is a molecule for each of oxygen, in a tank shut off from the air', () => {
    const shut = { ...co2, co2GPerH: entered(0) };
    const course = courseOf(alone({}, [shut], profileWith()), {
      hours: 5,
      fresh: true,
      options: { tolerance: TIGHT },
      adjust: (machine) => {
        const { respiration } = machine.plant;
        const kept = Float64Array.from(respiration);
        sealed(machine);
        respiration.set(kept.map(() => 1e-5));
      },
    });
    const before = course.record.knots.stateAt(0)[3] ?? 0;
    const after = course.record.knots.stateAt(course.record.endS)[3] ?? 0;
    const gained = shown(course, 'carbon') - shown(course, 'carbon', 0);
    expect(before - after).toBeGreaterThan(0.3);
    expect(off(gained, (before - after) / 31.9988)).toBeLessThan(1e-8);
  });
});

describe('oxidant', () => {
  const run = (decay: number, fault = true) =>
    courseOf(alone({}, [ozone], profileWith({ quantity: 'oxidant', above: 0.5 })), {
      hours: 4,
      fresh: true,
      fault: (upset) => {
        if (fault) upset.health.set('o3', 'stuck-on');
      },
      options: { tolerance: TIGHT },
      adjust: (machine) => {
        sealed(machine);
        machine.plant.chemistry.oxidantDecay = decay;
      },
    });
  const perS = (0.1 * 1.477) / 3600 / WATER;

  test('of ozone at full output builds up as dose by time where no decay is known, and the run says it is a bound', () => {
    const course = run(0);
    expect(off(shown(course, 'oxidant'), 4 * 3600 * perS)).toBeLessThan(1e-9);
    expect(timeTo(course, 'oxidant', 'above')).toBeCloseTo(0.5 / perS, 0);
    expect(course.record.bound).toBe(true);
  });

  test('that decays comes to (r/λ)·(1 − e^(−λt))', () => {
    const decay = 1 / 1800;
    expect(off(shown(run(decay), 'oxidant'), (perS / decay) * (1 - Math.exp(-decay * 4 * 3600)))).toBeLessThan(1e-8);
  });

  test('of everyday running is used up as it is made', () => {
    const course = run(0, false);
    expect(shown(course, 'oxidant')).toBe(0);
    expect(course.record.bound).toBe(false);
  });
});

test('a system in which nothing that dissolves can matter carries nothing of it', () => {
  const site = alone({}, [], profileWith({ quantity: 'ammonia', above: 1000 }));
  expect(courseOf(site, { hours: 1, fresh: true }).machine.plant.size).toBe(5);
});
