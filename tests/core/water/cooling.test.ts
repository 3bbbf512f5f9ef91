import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lumpTemperature } from '#core/water/cooling';
import { integrate } from './numerics';

const HOUR = 3600;

/** Every fault case is some mixture of these. */
const lump = fc.record({
  start: fc.double({ min: 2, max: 35, noNaN: true }),
  room: fc.double({ min: -10, max: 40, noNaN: true }),
  power: fc.double({ min: -2000, max: 5000, noNaN: true }),
  heatCapacity: fc.double({ min: 1e5, max: 1e9, noNaN: true }),
  loss: fc.double({ min: 0.5, max: 2000, noNaN: true }),
});

test('after one time constant 1/e of the difference is left', () => {
  const tau = 1.7e6 / 20;
  expect(lumpTemperature(26, 22, 0, 1.7e6, 20, tau)).toBeCloseTo(22 + 4 / Math.E, 12);
});

test('settles at the room plus power over loss', () => {
  expect(lumpTemperature(20, 22, 500, 1.7e6, 20.82, 1e9)).toBeCloseTo(22 + 500 / 20.82, 9);
});

test('without loss rises on a straight line: 300 W in 300 L of sea water, 0.88 K an hour', () => {
  const capacity = 0.3 * 1023.34 * 3998;
  expect(lumpTemperature(25, 20, 300, capacity, 0, HOUR) - 25).toBeCloseTo(0.88, 3);
  expect(lumpTemperature(25, 20, 300, capacity, 0, 7 * HOUR)).toBeCloseTo(25 + (300 * 7 * HOUR) / capacity, 10);
});

test('a tiny loss changes the straight line by a tiny bit, and not by cancellation', () => {
  const straight = lumpTemperature(25, 20, 300, 1.2e6, 0, HOUR);
  expect(Math.abs(lumpTemperature(25, 20, 300, 1.2e6, 1e-12, HOUR) - straight)).toBeLessThan(1e-11);
});

test('is what the reference ODE library makes of C dT/dt = P − UA (T − room), to 1e-9', () => {
  fc.assert(
    fc.property(lump, fc.double({ min: 60, max: 3 * 86_400, noNaN: true }), (s, elapsed) => {
      // Faster than a few hundred time constants the library only counts steps near rest.
      fc.pre((s.loss * elapsed) / s.heatCapacity < 200);
      const there = integrate((T) => (s.power - s.loss * (T - s.room)) / s.heatCapacity, s.start, elapsed);
      const here = lumpTemperature(s.start, s.room, s.power, s.heatCapacity, s.loss, elapsed);
      expect(Math.abs(here - there)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(there)));
    }),
    { numRuns: 60 },
  );
});

test('stays between where it starts and where it settles', () => {
  fc.assert(
    fc.property(lump, fc.double({ min: 0, max: 1e8, noNaN: true }), (s, elapsed) => {
      const settled = s.room + s.power / s.loss;
      const T = lumpTemperature(s.start, s.room, s.power, s.heatCapacity, s.loss, elapsed);
      const hair = 1e-9 * (1 + Math.abs(settled));
      return T >= Math.min(s.start, settled) - hair && T <= Math.max(s.start, settled) + hair;
    }),
  );
});

test('a larger tank always changes more slowly', () => {
  fc.assert(
    fc.property(lump, (s) => {
      const move = (c: number) => Math.abs(lumpTemperature(s.start, s.room, s.power, c, s.loss, HOUR) - s.start);
      return move(2 * s.heatCapacity) <= move(s.heatCapacity);
    }),
  );
});
