import 'server-only';
import type { Doubt, FittedStretch, Found } from '#core/calibration/found';
import { halfOf } from '#core/calibration/found';
import { heldOf, NO_SHIFT, type Shift } from '#core/calibration/held';
import { type ClockS, lumpOf } from '#core/calibration/lump';
import { type Point, runsWithin } from '#core/calibration/stretch';
import { studentT } from '#core/calibration/student';
import { evaporated, standingAt, type Used } from '#core/calibration/used';
import type { ResolvedSystem, ResolvedTank } from '#core/equipment/resolved';
import { type Fitted, fitCurve } from './fit-curve';

/** What evaporation is fitted from. */
export interface EvaporationFrom {
  resolved: ResolvedSystem;
  tanks: readonly ResolvedTank[];
  uses: readonly Used[];
  /** °C of the water, in order of time; empty where no probe tells. */
  temperature: readonly Point[];
  clockS: ClockS;
  leftOut: ReadonlySet<string>;
}

/** Uses and days below which nothing is said: what a pump brings at once is a good part of a day's. Common practice, no source. */
const LEAST_USES = 8;
const LEAST_DAYS = 6;
/** Litres to which people read a reservoir at best. Common practice, no source. */
const LEAST_SD = 0.1;
const DAY_MS = 86_400_000;
/** Doubts of these names are of the heat, not of the water that goes. */
const OF_WATER = /room/;

/** Key of one use, which stays the same however often it is found. */
export function useKey({ fromMs }: Used): string {
  return `used-${fromMs}`;
}

/**
 * Evaporation, from what the top-off used: as a multiple of what is in use.
 *
 * @returns   each use beside what it should have been; and what they say, null where too few say anything
 */
export function fitEvaporation(from: EvaporationFrom): { stretches: FittedStretch[]; found: Found | null } {
  const { resolved, tanks, uses, leftOut } = from;
  const kept = uses.filter((use) => !leftOut.has(useKey(use)));
  const expected = expectedOf(from, uses, NO_SHIFT);
  const wanted = expectedOf(from, kept, NO_SHIFT);
  const fit = ratioOf(kept, wanted);
  const days = kept.reduce((sum, { fromMs, toMs }) => sum + (toMs - fromMs) / DAY_MS, 0);
  const factor = fit?.parameters[0] ?? 1;
  const stretches = uses.map((use, i) => ({
    key: useKey(use),
    fromMs: use.fromMs,
    toMs: use.toMs,
    what: 'used by the top-off',
    points: [{ atMs: use.toMs, value: use.litres, fitted: factor * (expected[i] ?? 0) }],
    ...{ value: null, error: null, sd: null, isLeftOut: leftOut.has(useKey(use)) },
  }));
  if (!fit || kept.length < LEAST_USES || days < LEAST_DAYS) return { stretches, found: null };
  const inUse = wanted.reduce((sum, litres) => sum + litres, 0) / days;
  const other = (shift: Shift) => ratioOf(kept, expectedOf(from, kept, shift))?.parameters[0] ?? factor;
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  const doubts: Doubt[] = [
    { from: 'what was read, from one use to the next', half: inUse * studentT(fit.freedom) * (fit.errors[0] ?? 0) },
    ...heldOf(resolved, keys)
      .filter(({ name }) => OF_WATER.test(name))
      .map(({ name, low, high }) => ({
        from: `${name}, which is held as described`,
        half: inUse * Math.max(Math.abs(other(low) - factor), Math.abs(other(high) - factor)),
      })),
  ];
  const half = halfOf(doubts);
  const value = factor * inUse;
  return {
    stretches,
    found: {
      is: 'evaporation',
      unit: 'L/day',
      value,
      low: Math.max(0, value - half),
      high: value + half,
      doubts,
      inUse,
    },
  };
}

function expectedOf({ resolved, tanks, temperature, clockS }: EvaporationFrom, uses: readonly Used[], shift: Shift) {
  const lump = lumpOf(resolved, tanks, clockS, new Map(), { fromMs: 0, toMs: 0 }, shift);
  return uses.map((use) => {
    const there = runsWithin(temperature, use).flat();
    return evaporated(lump, use, standingAt(there, resolved.temperature));
  });
}

function ratioOf(uses: readonly Used[], expected: readonly number[]): Fitted | null {
  return fitCurve({
    values: uses.map(({ litres }) => litres),
    at: ([factor = 1]) => expected.map((litres) => factor * litres),
    starts: [1],
    least: [0.01],
    most: [30],
    leastSd: LEAST_SD,
  });
}
