import { describe, expect, test } from 'vitest';
import { airAt, type RoomAir, stillAir } from '#core/simulate/air';
import { type Follower, FOLLOWERS } from '#core/simulate/layout';
import { conductivity, freeAmmonia, oxygenSaturationPct, phOfNode } from '#core/simulate/laws-of-state';
import { type Air, OXYGEN, STRIDE, TEMPERATURE } from '#core/simulate/plant';
import { type LaggingProbe, probeTimeSlopes } from '#core/simulate/probes';
import { inAir, linear, salinity } from '#core/simulate/signal';
import { timeSlopes } from '#core/simulate/slopes';
import { factorise, linearise, makeStepper, ratesAt, solve } from '#core/simulate/stepper';
import { gauss, jacobian } from './dense';
import { type RandomPlant, randomPlant } from './random-plant';
import { dice } from './random-system';

const SEEDS = Array.from({ length: 150 }, (_, i) => i + 1);
const HOUR = 3600;

function airIn(room: RoomAir, t: number): Air {
  const air = stillAir();
  airAt(room, t, Math.floor(t / HOUR), air);
  return air;
}

function ratesOf({ plant, mode, room, probes }: Probed, t: number, x: Float64Array): Float64Array {
  const dx = new Float64Array(plant.size);
  ratesAt(makeStepper(plant, mode, room, 0, probes), t, Math.floor(t / HOUR), x, dx);
  return dx;
}

interface Probed extends RandomPlant {
  probes: LaggingProbe[];
}

/** A random plant with what is carried, and with a lagging probe for every kind of signal. */
function probed(seed: number, withHub: boolean, carried: readonly Follower[]): Probed {
  const lagging = carried.length === FOLLOWERS.length ? ['t', 'o', 's', 'air', '%', 'mS', 'pH', 'NH3'] : [];
  const random = randomPlant(seed, withHub, carried, lagging);
  const { plant } = random;
  const node = seed % plant.nodes;
  const signals = [
    linear(STRIDE * node + TEMPERATURE),
    linear(STRIDE * node + OXYGEN, 2, 1),
    salinity(node, plant.density),
    inAir(),
    oxygenSaturationPct(plant, node),
    conductivity(plant, node),
    phOfNode(plant, node, 'nbs'),
    freeAmmonia(plant, node),
  ];
  const probes = lagging.map((key, i) => ({
    key,
    at: plant.layout.probes + i,
    lagS: 30 * (i + 1),
    signal: signals[i] ?? inAir(),
  }));
  return { ...random, probes };
}

/** Our own solution of (shift·I − J)·u = r. */
function solved({ plant, mode, room, x, probes }: Probed, t: number, shift: number, r: Float64Array): Float64Array {
  const stepper = makeStepper(plant, mode, room, 0, probes);
  ratesAt(stepper, t, Math.floor(t / HOUR), x, stepper.f);
  linearise(stepper, t, Math.floor(t / HOUR), x);
  factorise(stepper, shift);
  const u = new Float64Array(plant.size);
  solve(stepper, r, u);
  return u;
}

/** The same from a full matrix, whose Jacobian knows nothing but the rates. */
function dense(random: Probed, t: number, shift: number, r: Float64Array): Float64Array {
  const m = jacobian((x) => ratesOf(random, t, x), random.x).map((row, i) =>
    row.map((value, j) => (i === j ? shift : 0) - value),
  );
  return gauss(m, r);
}

/**
 * Greatest difference of two vectors, each number taken against its own size and a part of the vector's: what a probe shows may be the small
 * difference of great numbers.
 */
function apart(a: Float64Array, b: Float64Array, part = 1e-6): number {
  const whole = Math.max(...b.map(Math.abs));
  return Math.max(...a.map((value, i) => Math.abs(value - (b[i] ?? 0)) / (Math.abs(b[i] ?? 0) + part * whole)));
}

describe.each<[string, boolean, readonly Follower[]]>([
  ['tanks round a sump', true, []],
  ['tanks that pass no water to each other', false, []],
  ['tanks round a sump with all that can dissolve, and probes that lag', true, FOLLOWERS],
  ['tanks apart with all that can dissolve, and probes that lag', false, FOLLOWERS],
  ['tanks round a sump with ammonia alone', true, ['ammonia']],
  ['tanks round a sump with carbon and no ammonia', true, ['alkalinity', 'carbon']],
])('the eliminated star of %s', (_, withHub, carried) => {
  test('solves the same equations as a full matrix of finite differences, at any step length', () => {
    // A full matrix of all that can dissolve is dear, so that fewer of those are looked at.
    const worst = SEEDS.slice(0, carried.length > 0 ? 30 : SEEDS.length).map((seed) => {
      const random = probed(seed, withHub, carried);
      const next = dice(seed + 5000);
      const r = Float64Array.from(random.x, () => next() - 0.5);
      const shift = 10 ** (-5 + 6 * next());
      const t = 24 * HOUR * next();
      return {
        seed,
        apart: apart(solved(random, t, shift, r), dense(random, t, shift, r), carried.length > 0 ? 1e-3 : 1e-6),
      };
    });
    expect(worst.filter((one) => !(one.apart < 2e-4))).toEqual([]);
  });
});

test('the random plants meet every regime: spilling, flooding, open waste, wastes gone dry, make-up, no evaporation', () => {
  const plants = SEEDS.map((seed) => randomPlant(seed, true));
  const met = (some: (random: RandomPlant, k: number) => boolean) =>
    plants.filter((random) => random.plant.runVolume.some((_v, k) => some(random, k))).length;
  const volume = ({ x }: RandomPlant, k: number) => x[4 * k] as number;
  expect(met((random, k) => random.mode.spilling[k] === 1)).toBeGreaterThan(20);
  expect(met((random, k) => (random.mode.floodRate[k] as number) > 0)).toBeGreaterThan(20);
  expect(met((random, k) => random.mode.siphoning[k] === 1)).toBeGreaterThan(5);
  expect(met((random, k) => random.mode.waste[k] !== 0)).toBeGreaterThan(20);
  expect(
    met((random, k) => random.mode.waste[k] !== 0 && volume(random, k) < (random.plant.wasteVolume[k] as number)),
  ).toBeGreaterThan(2);
  expect(met((random, k) => random.mode.makeUp[k] !== 0)).toBeGreaterThan(20);
  expect(met((random, k) => random.mode.evaporation[k] === 0)).toBeGreaterThan(10);
});

test('what the rates owe to the hour alone, while the room drifts, is its own finite difference in time', () => {
  const step = 60;
  const worst = SEEDS.map((seed) => {
    const random = probed(seed, seed % 2 === 0, seed % 3 === 0 ? FOLLOWERS : []);
    const t = HOUR * (Math.floor(24 * dice(seed)()) + 0.5);
    const ft = new Float64Array(random.plant.size);
    timeSlopes(random.plant, random.mode, airIn(random.room, t), random.x, ft);
    probeTimeSlopes(random.probes, airIn(random.room, t), ft);
    const later = ratesOf(random, t + step, random.x);
    const earlier = ratesOf(random, t - step, random.x);
    return {
      seed,
      apart: apart(
        ft,
        later.map((value, i) => (value - (earlier[i] ?? 0)) / (2 * step)),
      ),
    };
  });
  expect(worst.filter((one) => !(one.apart < 2e-6))).toEqual([]);
  expect(SEEDS.some((seed) => randomPlant(seed, true).room.steady)).toBe(false);
});
