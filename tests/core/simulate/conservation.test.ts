import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Health, PowerPhase } from '#core/simulate/device';
import type { Machine } from '#core/simulate/machine';
import { drainFlow, floorFlow } from '#core/simulate/outflows';
import { emptyLaws, SALT, STRIDE, TEMPERATURE, VOLUME } from '#core/simulate/plant';
import { rates } from '#core/simulate/rates';
import { stillAir } from '#core/simulate/air';
import { latentHeat } from '#core/water/latent-heat';
import type { Upset } from '#core/faults/upset';
import { courseOf, type Course, onlySystem } from './course';
import { randomPlant } from './random-plant';
import { dice, randomSite } from './random-system';

const SEED = 20_260_602;
const RUNS = { numRuns: 12, seed: SEED };
const HOURS = 15;
const TIGHTER = { relative: 1e-9, absolute: 1e-10 };

/** Power that comes and goes at random moments. */
function flicker(next: () => number): PowerPhase[] {
  const count = 1 + Math.floor(6 * next());
  const times = Array.from({ length: count }, () => HOURS * 3600 * next()).sort((a, b) => a - b);
  return [0, ...times].map((fromS) => ({ fromS, live: next() < 0.5, thanks: [] }));
}

/** Something wrong with nearly everything. */
function havoc(seed: number, upset: Upset): void {
  const next = dice(seed);
  const system = onlySystem(randomSite(seed));
  const healths: Health[] = ['ok', 'ok', 'dead', 'stuck-on', 'no-effect'];
  for (const { key } of system.equipment) upset.health.set(key, healths[Math.floor(5 * next())] ?? 'ok');
  for (const { key } of system.tanks) if (next() < 0.3) upset.blockedOverflows.add(key);
  if (next() < 0.3) upset.probes.set('sump-level', { as: 'stuck', value: -1000 });
  if (next() < 0.5) upset.sumpRaised = 0.05 * next();
}

/** Nothing evaporates, no heat comes or goes, nobody fills a reservoir. */
function adiabatic(machine: Machine, seed: number): void {
  const next = dice(seed + 99);
  machine.plant.evaporationWPerPa.fill(0);
  machine.plant.lossWPerK.fill(0);
  machine.refilled = false;
  for (const device of machine.devices) {
    device.phases = flicker(next);
    device.watts = 0;
    device.coolingW = 0;
  }
  for (let k = 0; k < machine.plant.nodes; k++) machine.initial[STRIDE * k + TEMPERATURE] = 15 + 20 * next();
}

/** And no water comes or goes either: rims are high, skimmers never flood, top-offs are dry. */
function closed(machine: Machine, seed: number): void {
  adiabatic(machine, seed);
  for (const w of machine.watches) if (w.role === 'rim' || w.role === 'flood') w.on = Number.POSITIVE_INFINITY;
  for (const device of machine.devices) device.makeUp = null;
}

function upheaval(seed: number, adjust: (machine: Machine, seed: number) => void): Course {
  return courseOf(randomSite(seed), {
    hours: HOURS,
    fresh: true,
    fault: (upset) => havoc(seed, upset),
    adjust: (machine) => adjust(machine, seed),
    options: { tolerance: TIGHTER },
  });
}

/** Sum over nodes of what `of` makes of volume, temperature and salt, at a knot. */
function whole({ machine, record }: Course, i: number, of: (v: number, t: number, m: number) => number): number {
  let sum = 0;
  for (let k = 0; k < machine.plant.nodes; k++) {
    const value = (offset: number) => record.knots.value(i, STRIDE * k + offset);
    sum += of(value(VOLUME), value(TEMPERATURE), value(SALT));
  }
  return sum;
}

/** Greatest change of a sum over a whole course, as a part of what it was. */
function drift(course: Course, of: (v: number, t: number, m: number) => number, beside = (_i: number) => 0): number {
  const at = (i: number) => whole(course, i, of) + beside(i);
  const begin = at(0);
  let worst = 0;
  for (let i = 1; i < course.record.knots.length; i++) worst = Math.max(worst, Math.abs(at(i) - begin));
  return begin === 0 ? worst : worst / begin;
}

const seeds = fc.integer({ min: 1, max: 100_000 });

describe(`whatever switches, fails and comes back (seed ${SEED})`, () => {
  test('a closed system keeps its water, its salt and its heat', () => {
    let events = 0;
    fc.assert(
      fc.property(seeds, (seed) => {
        const course = upheaval(seed, closed);
        events += course.record.knots.length;
        expect(drift(course, (v) => v)).toBeLessThan(1e-9);
        expect(drift(course, (_v, _t, m) => m)).toBeLessThan(1e-9);
        expect(drift(course, (v, t) => v * t)).toBeLessThan(1e-6);
      }),
      RUNS,
    );
    expect(events).toBeGreaterThan(500);
  });

  test('an open one keeps its water if what lies on the floor and in the reservoirs is counted', () => {
    let [spilled, drawn] = [0, 0];
    fc.assert(
      fc.property(seeds, (seed) => {
        const course = upheaval(seed, adiabatic);
        const { plant } = course.machine;
        const { knots } = course.record;
        const end = plant.layout.reservoirs;
        const beside = (i: number) =>
          Array.from({ length: plant.reservoirs + 1 }, (_, r) => knots.value(i, end + r)).reduce((a, b) => a + b, 0);
        expect(drift(course, (v) => v, beside)).toBeLessThan(1e-9);
        if (knots.value(knots.length - 1, plant.layout.floor) > 1e-3) spilled++;
        if (plant.reservoirs > 0 && knots.value(knots.length - 1, end) < knots.value(0, end) - 1e-4) drawn++;
      }),
      { ...RUNS, numRuns: 20 },
    );
    // It means something only if water did reach the floor and did come from a reservoir.
    expect(spilled).toBeGreaterThan(2);
    expect(drawn).toBeGreaterThan(2);
  });

  test('salt goes nowhere but over a rim or through a waste', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const course = courseOf(randomSite(seed), { hours: 72 });
        expect(course.record.knots.value(course.record.knots.length - 1, course.machine.plant.layout.floor)).toBe(0);
        expect(drift(course, (_v, _t, m) => m)).toBeLessThan(1e-6);
      }),
      { ...RUNS, numRuns: 6 },
    );
  });
});

describe('at any one instant', () => {
  test('water, salt and heat of all nodes together change by what crosses the edge of the system, and by nothing else', () => {
    for (let seed = 1; seed <= 150; seed++) {
      const { plant, mode, x } = randomPlant(seed, seed % 3 > 0);
      const air = { ...stillAir(), temperature: 19, vapour: 1200 };
      const laws = emptyLaws(plant.nodes);
      const dx = new Float64Array(plant.size);
      rates(plant, mode, air, x, dx, laws);
      const sums = { water: 0, salt: 0, heat: 0, floor: 0 };
      let scale = 0;
      for (let k = 0; k < plant.nodes; k++) {
        const [v, t, m] = [0, 1, 2].map((i) => x[STRIDE * k + i] as number) as [number, number, number];
        const [dv, dt, dm] = [0, 1, 2].map((i) => dx[STRIDE * k + i] as number) as [number, number, number];
        const latent = laws.latent[k] as number;
        const gone = latent / (latentHeat(t) * plant.density);
        const floor = floorFlow(plant, mode, k, v);
        const lost = floor + drainFlow(plant, mode, k, v);
        const makeUp = mode.makeUp[k] as number;
        const brought = (makeUp - (mode.ownHeat[k] as number)) * 19 + (mode.ownHeatC[k] as number);
        const watts = (mode.power[k] as number) - (plant.lossWPerK[k] as number) * (t - 19) - latent;
        sums.water += dv - makeUp + lost + gone;
        sums.salt += dm - (mode.salt[k] as number) + (lost * m) / v;
        sums.heat += dv * t + v * dt - watts / plant.heatCapacity - brought + (lost + gone) * t;
        sums.floor += floor;
        scale += Math.abs(dv) + lost + mode.returnTotal;
      }
      expect(Math.abs(sums.water)).toBeLessThan(1e-13 * (1 + scale));
      expect(Math.abs(sums.salt)).toBeLessThan(1e-12 * (1 + scale));
      expect(Math.abs(sums.heat)).toBeLessThan(1e-12 * (1 + scale));
      expect(dx[plant.layout.floor]).toBeCloseTo(sums.floor, 14);
      for (let r = 0; r < plant.reservoirs; r++)
        expect(dx[plant.layout.reservoirs + r]).toBe(-(mode.draw[r] as number));
    }
  });
});
