import { describe, expect, test } from 'vitest';
import { airAt, type RoomAir, stillAir } from '#core/simulate/air';
import type { Air } from '#core/simulate/plant';
import { emptyLaws } from '#core/simulate/plant';
import { rates } from '#core/simulate/rates';
import { slopes, timeSlopes } from '#core/simulate/slopes';
import { emptyFactor, emptyStar, factorStar, solveStar } from '#core/simulate/star';
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

function ratesOf({ plant, mode, room }: RandomPlant, t: number, x: Float64Array): Float64Array {
  const dx = new Float64Array(plant.size);
  rates(plant, mode, airIn(room, t), x, dx, emptyLaws(plant.nodes));
  return dx;
}

/** Our own solution of (shift·I − J)·u = r. */
function solved(random: RandomPlant, t: number, shift: number, r: Float64Array): Float64Array {
  const { plant, mode, room, x } = random;
  const laws = emptyLaws(plant.nodes);
  const dx = new Float64Array(plant.size);
  rates(plant, mode, airIn(room, t), x, dx, laws);
  const star = emptyStar(plant.nodes, plant.hub);
  slopes(plant, mode, x, dx, laws, star);
  const factor = emptyFactor(plant.nodes);
  factorStar(star, shift, factor);
  const u = new Float64Array(plant.size);
  solveStar(star, factor, plant.reservoirs, r, u);
  return u;
}

/** The same from a full matrix, whose Jacobian knows nothing but the rates. */
function dense(random: RandomPlant, t: number, shift: number, r: Float64Array): Float64Array {
  const m = jacobian((x) => ratesOf(random, t, x), random.x).map((row, i) =>
    row.map((value, j) => (i === j ? shift : 0) - value),
  );
  return gauss(m, r);
}

/** Greatest difference of two vectors, each number taken against its own size and the vector's. */
function apart(a: Float64Array, b: Float64Array): number {
  const whole = Math.max(...b.map(Math.abs));
  return Math.max(...a.map((value, i) => Math.abs(value - (b[i] ?? 0)) / (Math.abs(b[i] ?? 0) + 1e-6 * whole)));
}

describe.each([
  ['tanks round a sump', true],
  ['tanks that pass no water to each other', false],
])('the eliminated star of %s', (_, withHub) => {
  test('solves the same equations as a full matrix of finite differences, at any step length', () => {
    const worst = SEEDS.map((seed) => {
      const random = randomPlant(seed, withHub);
      const next = dice(seed + 5000);
      const r = Float64Array.from(random.x, () => next() - 0.5);
      const shift = 10 ** (-5 + 6 * next());
      const t = 24 * HOUR * next();
      return { seed, apart: apart(solved(random, t, shift, r), dense(random, t, shift, r)) };
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
    const random = randomPlant(seed, seed % 2 === 0);
    const t = HOUR * (Math.floor(24 * dice(seed)()) + 0.5);
    const ft = new Float64Array(random.plant.size);
    timeSlopes(random.plant, random.mode, airIn(random.room, t), random.x, ft);
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
