import { vapourPressure } from '../water/vapour-pressure';

/** A system as one lump of water that cools, with everything but its heat loss known. SI units. */
export interface Lump {
  /** J/K of all its water. */
  heatCapacity: number;
  /** W/Pa of all its surfaces. */
  evaporation: number;
  /** Part of the vapour pressure that is left over salt water. */
  vapourFactor: number;
  /** W put into the water by pumps and lamps at a moment. */
  powerAt: (atMs: number) => number;
  /** °C of the room, and Pa of water vapour in it. */
  roomAt: (atMs: number) => { temperature: number; vapour: number };
}

/** Longest step of the integration, s: a lump of water hardly bends within it. */
const STEP_S = 600;

/** One step of the integration, with what surrounds the water at its beginning, middle and end. */
interface Step {
  s: number;
  /** Index of the moment that is reached with it; −1 on the way. */
  reaches: number;
  around: readonly [Around, Around, Around];
}

interface Around {
  power: number;
  temperature: number;
  vapour: number;
}

/**
 * Temperature of a lump of water at some moments, by the balance
 *
 *   C·dT/dt = P − UA·(T − room) − K·(f·e(T) − vapour)
 *
 * @param times   ms since 1970, in order
 * @returns       for a loss UA in W/K (walls, base and surface, evaporation not counted) and a temperature in °C at the first
 *                of the times: °C at each of them
 *
 * Holds      while the return mixes all of it. Runge-Kutta of the fourth order in steps of ten minutes at most; with a
 *            constant room and no evaporation it meets the closed form of `water/cooling` to a millionth of a kelvin.
 * Leaves out what glass, sand and rock hold of heat, and probes that follow late.
 * Checked    tests/core/calibration/cooling-curve.test.ts
 */
export function coolingCurve(lump: Lump, times: readonly number[]): (loss: number, start: number) => number[] {
  const steps = stepsOf(lump, times);
  return (loss, start) => {
    let temperature = start;
    const line = [start];
    for (const step of steps) {
      temperature = oneStep(lump, step, loss, temperature);
      if (step.reaches >= 0) line[step.reaches] = temperature;
    }
    return line;
  };
}

function stepsOf({ powerAt, roomAt }: Lump, times: readonly number[]): Step[] {
  const around = (atMs: number): Around => {
    const { temperature, vapour } = roomAt(atMs);
    return { power: powerAt(atMs), temperature, vapour };
  };
  return times.slice(1).flatMap((timeMs, before) => {
    const fromMs = times[before] ?? timeMs;
    const many = Math.max(1, Math.ceil((timeMs - fromMs) / 1000 / STEP_S));
    const stepMs = (timeMs - fromMs) / many;
    return Array.from({ length: many }, (_, i): Step => {
      const atMs = fromMs + i * stepMs;
      return {
        s: stepMs / 1000,
        reaches: i === many - 1 ? before + 1 : -1,
        around: [around(atMs), around(atMs + stepMs / 2), around(atMs + stepMs)],
      };
    });
  });
}

function oneStep(lump: Lump, { s: h, around: [from, middle, to] }: Step, loss: number, temperature: number): number {
  const k1 = slope(lump, from, loss, temperature);
  const k2 = slope(lump, middle, loss, temperature + (h / 2) * k1);
  const k3 = slope(lump, middle, loss, temperature + (h / 2) * k2);
  const k4 = slope(lump, to, loss, temperature + h * k3);
  return temperature + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}

function slope(lump: Lump, { power, temperature, vapour }: Around, loss: number, t: number): number {
  const latent = lump.evaporation * (lump.vapourFactor * vapourPressure(t) - vapour);
  return (power - loss * (t - temperature) - latent) / lump.heatCapacity;
}
