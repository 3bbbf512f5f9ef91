import { describe, expect, test } from 'vitest';
import { plainChemistry } from '#core/simulate/chemistry';
import { emptyMode, OXYGEN, STRIDE, TEMPERATURE, VOLUME } from '#core/simulate/plant';
import { linearise, makeStepper, ratesAt, type Stepper, step, TOLERANCE } from '#core/simulate/stepper';
import { facility, room } from '../../_support/build-facility';
import { courseOf } from './course';

const HOUR = 8;
const swing = Array.from({ length: 24 }, (_, h) => 21 + 3 * Math.sin((2 * Math.PI * (h - 9)) / 24));

/** The base system in full running, in a room that warms by the minute. */
const { machine, record } = courseOf(facility({ rooms: [{ ...room(), temperatureC: swing }] }), { hours: 0.2 });
const { plant, mode } = machine;

/** Thrown far off its rest: sump hot and low in oxygen, display brimming. */
const start = record.knots.stateAt(record.endS);
const SUMP = STRIDE * plant.hub;
start[SUMP + TEMPERATURE] = (start[SUMP + TEMPERATURE] as number) + 5;
start[SUMP + OXYGEN] = 1.5;
start[VOLUME] = (start[VOLUME] as number) + 0.005;

function stepperOf(): Stepper {
  return makeStepper(plant, mode, machine.room, HOUR * 3600);
}

/** The state after `span` seconds in `count` equal steps. */
function inSteps(count: number, span: number, from = start): Float64Array {
  const stepper = stepperOf();
  let x = from;
  for (let i = 0; i < count; i++) {
    const [t, to] = [(i * span) / count, new Float64Array(plant.size)];
    ratesAt(stepper, t, HOUR, x, stepper.f);
    linearise(stepper, t, HOUR, x);
    step(stepper, t, span / count, HOUR, x, to, TOLERANCE);
    x = to;
  }
  return x;
}

function apart(a: Float64Array, b: Float64Array): number {
  return Math.max(...a.map((value, i) => Math.abs(value - (b[i] ?? 0)) / (1e-3 + Math.abs(b[i] ?? 0))));
}

test('the machine really runs: the return flows, the heater or the pump gives heat, the room drifts', () => {
  expect(mode.returnTotal).toBeGreaterThan(0);
  expect(mode.power.some((watts) => watts > 0)).toBe(true);
  expect(machine.room.steady).toBe(false);
});

test('half the step leaves a sixteenth of the error: the method is of fourth order on a whole system', () => {
  const span = 240;
  const exact = inSteps(1024, span);
  const errors = [16, 32, 64].map((count) => apart(inSteps(count, span), exact));
  const ratios = [0, 1].map((i) => (errors[i] ?? 0) / (errors[i + 1] ?? 0));
  for (const ratio of ratios) expect(ratio).toBeGreaterThan(12);
  for (const ratio of ratios) expect(ratio).toBeLessThan(24);
});

test('the estimate of the error never lies by more than a factor of ten below the error itself', () => {
  for (const h of [20, 40, 80, 160]) {
    const stepper = stepperOf();
    const to = new Float64Array(plant.size);
    ratesAt(stepper, 0, HOUR, start, stepper.f);
    linearise(stepper, 0, HOUR, start);
    step(stepper, 0, h, HOUR, start, to, TOLERANCE);
    const exact = inSteps(512, h);
    const scaled = to.map((value, i) => {
      const size = Math.max(Math.abs(value), Math.abs(start[i] ?? 0));
      const weight = stepper.weights[i] ?? 1;
      return (weight * (value - (exact[i] ?? 0))) / (TOLERANCE.absolute + TOLERANCE.relative * size);
    });
    const error = Math.sqrt(scaled.reduce((sum, e) => sum + e * e, 0) / scaled.length);
    expect(stepper.error).toBeGreaterThan(error / 10);
  }
});

describe('steps far beyond the fastest time constant', () => {
  // The layer over the crest drains within ten seconds; what is thrown off is left to settle first.
  const fastest = 1 / Math.max(...plant.gravityPerS);
  const settled = inSteps(600, 3600);
  const span = 36_000;
  const exact = inSteps(6000, span, settled);

  test.each([60, 600, 3600, 12_000])('of %i s stay stable and arrive where small ones do', (h) => {
    expect(h).toBeGreaterThan(5 * fastest);
    // A nudge that the fast flow undoes at once must not swing up, however long the step.
    const nudged = settled.map((value, i) => value * (i === VOLUME ? 1 + 1e-4 : 1));
    const x = inSteps(span / h, span, nudged);
    for (let k = 0; k < plant.nodes; k++) {
      const at = STRIDE * k;
      expect(Math.abs((x[at + TEMPERATURE] as number) - (exact[at + TEMPERATURE] as number))).toBeLessThan(0.02);
      expect(Math.abs((x[at + OXYGEN] as number) - (exact[at + OXYGEN] as number))).toBeLessThan(0.02);
      expect(Math.abs((x[at + VOLUME] as number) - (exact[at + VOLUME] as number))).toBeLessThan(1e-4);
    }
  });
});

test('a mode that asks for nothing at all leaves the water as it was', () => {
  const quiet = { ...machine.room, steady: true };
  const stepper = makeStepper(
    {
      ...plant,
      lossWPerK: plant.lossWPerK.map(() => 0),
      respiration: plant.respiration.map(() => 0),
      chemistry: plainChemistry(plant.nodes, plant.chemistry.salinity),
    },
    emptyMode(plant.nodes, plant.reservoirs),
    quiet,
    0,
  );
  const to = new Float64Array(plant.size);
  ratesAt(stepper, 0, HOUR, start, stepper.f);
  linearise(stepper, 0, HOUR, start);
  step(stepper, 0, 1e6, HOUR, start, to, TOLERANCE);
  expect(to).toEqual(start);
});
