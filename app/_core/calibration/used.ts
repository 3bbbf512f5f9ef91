import { latentHeat } from '../water/latent-heat';
import { vapourPressure } from '../water/vapour-pressure';
import type { Lump } from './cooling-curve';
import { fallsOf } from './falling';
import type { Point, Span } from './stretch';

/** Water that was used between two moments, litres. */
export interface Used extends Span {
  litres: number;
}

/** Longest and shortest time between two looks that is one use, ms; mm by which a reservoir must be refilled to count. Common practice, no source. */
const LONGEST_MS = 60 * 3_600_000;
const SHORTEST_MS = 4 * 3_600_000;
const REFILLED_MM = 8;

/**
 * What people noted on rounds: each time what was used since somebody last looked.
 *
 * @param noted   in order of time
 */
export function usedByRounds(noted: readonly { atMs: number; litres: number }[]): Used[] {
  return noted.slice(1).flatMap(({ atMs, litres }, at) => {
    const fromMs = noted[at]?.atMs ?? atMs;
    const isOne = atMs - fromMs >= SHORTEST_MS && atMs - fromMs <= LONGEST_MS;
    return isOne ? [{ fromMs, toMs: atMs, litres }] : [];
  });
}

/**
 * What left a reservoir by its level: each fall from one refilling to the next.
 *
 * @param level     mm, in order of time
 * @param surface   m² of the reservoir
 */
export function usedByLevel(level: readonly Point[], surface: number): Used[] {
  return fallsOf(level, REFILLED_MM)
    .filter(({ fromMs, toMs }) => toMs - fromMs >= SHORTEST_MS)
    .map(({ fromMs, toMs, from, to }) => ({ fromMs, toMs, litres: (from - to) * surface }));
}

const STEP_MS = 1_800_000;
/** kg of fresh water in a litre. */
const LITRE_KG = 1;

/**
 * Water that a lump should have lost to the air over a span, litres, at the evaporation in use.
 *
 * @param waterC   °C of the water at a moment
 */
export function evaporated(lump: Lump, { fromMs, toMs }: Span, waterC: (atMs: number) => number): number {
  const steps = Math.max(1, Math.ceil((toMs - fromMs) / STEP_MS));
  const stepS = (toMs - fromMs) / 1000 / steps;
  let kg = 0;
  for (let i = 0; i < steps; i++) {
    const atMs = fromMs + (i + 0.5) * stepS * 1000;
    const t = waterC(atMs);
    const heat = lump.evaporation * (lump.vapourFactor * vapourPressure(t) - lump.roomAt(atMs).vapour);
    kg += (heat / latentHeat(t)) * stepS;
  }
  return kg / LITRE_KG;
}

/** The value at a moment of readings in order of time: the last one before it, or the first. */
export function standingAt(points: readonly Point[], otherwise: number): (atMs: number) => number {
  let low = 0;
  return (atMs) => {
    if ((points[low]?.atMs ?? 0) > atMs) low = 0;
    while (low + 1 < points.length && (points[low + 1]?.atMs ?? 0) <= atMs) low += 1;
    return points[low]?.value ?? otherwise;
  };
}
