import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lumpTemperature } from '#core/water/cooling';
import { timeToLimit } from '#core/water/time-to-limit';
import { integrate } from './numerics';

const state = fc.record({
  start: fc.double({ min: 2, max: 35, noNaN: true }),
  room: fc.double({ min: -10, max: 40, noNaN: true }),
  power: fc.double({ min: -2000, max: 5000, noNaN: true }),
  heatCapacity: fc.double({ min: 1e5, max: 1e9, noNaN: true }),
  loss: fc.double({ min: 0.5, max: 2000, noNaN: true }),
});

/** Part of the way from start to rest that is covered at the limit. */
const part = fc.double({ min: 0.01, max: 0.99, noNaN: true });

test('is τ·ln((T0 − T∞)/(Tlimit − T∞)): 26 to 24 °C in a room of 22 °C takes τ·ln 2', () => {
  expect(timeToLimit(26, 22, 0, 1.7e6, 20, 24)).toBeCloseTo((1.7e6 / 20) * Math.LN2, 6);
});

test('without loss is heat over power: 2 K at 300 W', () => {
  expect(timeToLimit(25, 20, 300, 1.2e6, 0, 27)).toBeCloseTo((1.2e6 * 2) / 300, 9);
  expect(timeToLimit(25, 20, 0, 1.2e6, 0, 27)).toBe(Number.POSITIVE_INFINITY);
});

test('is the inverse of the cooling curve, to 1e-9', () => {
  fc.assert(
    fc.property(state, part, (s, p) => {
      const settled = s.room + s.power / s.loss;
      fc.pre(Math.abs(settled - s.start) > 0.1);
      const limit = s.start + p * (settled - s.start);
      const t = timeToLimit(s.start, s.room, s.power, s.heatCapacity, s.loss, limit);
      const there = lumpTemperature(s.start, s.room, s.power, s.heatCapacity, s.loss, t);
      expect(Math.abs(there - limit)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(settled)));
    }),
  );
});

test('lands where the reference ODE library lands, to 1e-9', () => {
  fc.assert(
    fc.property(state, part, (s, p) => {
      const settled = s.room + s.power / s.loss;
      fc.pre(Math.abs(settled - s.start) > 0.1);
      const limit = s.start + p * (settled - s.start);
      const t = timeToLimit(s.start, s.room, s.power, s.heatCapacity, s.loss, limit);
      const there = integrate((T) => (s.power - s.loss * (T - s.room)) / s.heatCapacity, s.start, t);
      expect(Math.abs(there - limit)).toBeLessThanOrEqual(1e-9 * (1 + Math.abs(settled)));
    }),
    { numRuns: 40 },
  );
});

test('is never when the limit lies the other way or beyond the rest, and nothing when it is already there', () => {
  expect(timeToLimit(26, 22, 0, 1.7e6, 20, 27)).toBe(Number.POSITIVE_INFINITY);
  expect(timeToLimit(26, 22, 0, 1.7e6, 20, 22)).toBe(Number.POSITIVE_INFINITY);
  expect(timeToLimit(26, 22, 0, 1.7e6, 20, 21.99)).toBe(Number.POSITIVE_INFINITY);
  expect(timeToLimit(26, 22, 0, 1.7e6, 20, 21)).toBe(Number.POSITIVE_INFINITY);
  expect(timeToLimit(26, 22, 0, 1.7e6, 20, 26)).toBe(0);
});

test('is long but not never for a drive of milliwatts, and short for a thousandth of a degree', () => {
  expect(timeToLimit(25, 20, 0.005, 1.2e6, 0, 27)).toBeCloseTo(4.8e8, 0);
  expect(timeToLimit(25, 20, -0.005, 1.2e6, 0, 23)).toBeCloseTo(4.8e8, 0);
  expect(timeToLimit(25, 20, 300, 1.2e6, 0, 25.001)).toBeCloseTo(4, 6);
  expect(timeToLimit(25, 20, -300, 1.2e6, 0, 24.999)).toBeCloseTo(4, 6);
});

test('a stronger stuck heater never lengthens the time to overheat', () => {
  fc.assert(
    fc.property(state, fc.double({ min: 0, max: 3000, noNaN: true }), (s, more) => {
      const limit = s.start + 4;
      const time = (power: number) => timeToLimit(s.start, s.room, power, s.heatCapacity, s.loss, limit);
      return time(s.power + more) <= time(s.power) * (1 + 1e-12);
    }),
  );
});
