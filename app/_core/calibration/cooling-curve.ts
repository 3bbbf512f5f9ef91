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

/**
 * Temperature of a lump of water at some moments, by the balance
 *
 *   C·dT/dt = P − UA·(T − room) − K·(f·e(T) − vapour)
 *
 * @param times   ms since 1970, in order; the water has `start` at the first
 * @param loss    W/K UA: walls, base and surface, evaporation not counted
 * @param start   °C
 * @returns       °C at each of the times
 *
 * Holds      while the return mixes all of it. Runge-Kutta of the fourth order in steps of ten minutes at most; with a
 *            constant room and no evaporation it meets the closed form of `water/cooling` to a millionth of a kelvin.
 * Leaves out what glass, sand and rock hold of heat, and probes that follow late.
 * Checked    tests/core/calibration/cooling-curve.test.ts
 */
export function coolingCurve(lump: Lump, times: readonly number[], loss: number, start: number): number[] {
  let temperature = start;
  let atMs = times[0] ?? 0;
  return times.map((timeMs) => {
    const steps = Math.ceil((timeMs - atMs) / 1000 / STEP_S);
    const stepMs = steps > 0 ? (timeMs - atMs) / steps : 0;
    for (let i = 0; i < steps; i++) {
      temperature = oneStep(lump, loss, temperature, atMs, stepMs);
      atMs += stepMs;
    }
    return temperature;
  });
}

function oneStep(lump: Lump, loss: number, temperature: number, atMs: number, stepMs: number): number {
  const h = stepMs / 1000;
  const slope = (at: number, t: number) => {
    const room = lump.roomAt(at);
    const latent = lump.evaporation * (lump.vapourFactor * vapourPressure(t) - room.vapour);
    return (lump.powerAt(at) - loss * (t - room.temperature) - latent) / lump.heatCapacity;
  };
  const k1 = slope(atMs, temperature);
  const k2 = slope(atMs + stepMs / 2, temperature + (h / 2) * k1);
  const k3 = slope(atMs + stepMs / 2, temperature + (h / 2) * k2);
  const k4 = slope(atMs + stepMs, temperature + h * k3);
  return temperature + (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}
