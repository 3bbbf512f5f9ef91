import 'server-only';
import { together } from '#core/calibration/combine';
import type { Doubt, FittedStretch, Found } from '#core/calibration/found';
import { halfOf } from '#core/calibration/found';
import { heldOf, NO_SHIFT, type Shift } from '#core/calibration/held';
import { type ClockS, lossInUse, lumpOf } from '#core/calibration/lump';
import type { Stretch } from '#core/calibration/stretch';
import type { Watts } from '#core/calibration/switched';
import type { ResolvedSystem, ResolvedTank } from '#core/equipment/resolved';
import { fitCooling } from './fit-cooling';
import type { Fitted } from './fit-curve';

/** What the heat loss is fitted from. */
export interface HeatLossFrom {
  resolved: ResolvedSystem;
  tanks: readonly ResolvedTank[];
  stretches: readonly Stretch[];
  watts: ReadonlyMap<string, readonly Watts[]>;
  clockS: ClockS;
  /** Keys of stretches that somebody left out. */
  leftOut: ReadonlySet<string>;
}

/** Nights below which nothing is said: two may both have been odd. Common practice, no source. */
export const LEAST_NIGHTS = 3;

/**
 * Heat loss of the water that mixes, from stretches in which it cooled by itself.
 *
 * @returns   the stretches, each with its curve; and what they say, null where too few say anything
 */
export function fitHeatLoss(from: HeatLossFrom): { stretches: FittedStretch[]; found: Found | null } {
  const { tanks, resolved, stretches, leftOut } = from;
  const inUse = lossInUse(tanks);
  const fits = stretches.map((stretch) => fitOne(from, stretch, inUse, NO_SHIFT));
  const drawn = stretches.map((stretch, i) => drawnOf(stretch, fits[i] ?? null, leftOut.has(stretch.key)));
  const kept = stretches.filter(({ key }, i) => fits[i] && !leftOut.has(key));
  if (kept.length < LEAST_NIGHTS) return { stretches: drawn, found: null };
  const said = saidBy(from, kept, inUse, NO_SHIFT);
  if (!said) return { stretches: drawn, found: null };
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  const doubts: Doubt[] = [
    { from: 'readings, and what differs from night to night', half: said.half },
    ...heldOf(resolved, keys).map(({ name, low, high }) => ({
      from: `${name}, which is held as described`,
      half: spread(said.value, [saidBy(from, kept, inUse, low)?.value, saidBy(from, kept, inUse, high)?.value]),
    })),
  ];
  const half = halfOf(doubts);
  return {
    stretches: drawn,
    found: {
      is: 'heat-loss',
      unit: 'W/K',
      value: said.value,
      low: Math.max(0, said.value - half),
      high: said.value + half,
      doubts,
      inUse,
    },
  };
}

/** The farther of two ends. */
function spread(value: number, ends: readonly (number | undefined)[]): number {
  return Math.max(...ends.map((end) => Math.abs((end ?? value) - value)));
}

function fitOne(from: HeatLossFrom, stretch: Stretch, inUse: number, shift: Shift): Fitted | null {
  const { resolved, tanks, clockS, watts } = from;
  return fitCooling(stretch, lumpOf(resolved, tanks, clockS, watts, stretch, shift), inUse);
}

function saidBy(from: HeatLossFrom, kept: readonly Stretch[], inUse: number, shift: Shift) {
  const fits = kept.flatMap((stretch) => fitOne(from, stretch, inUse, shift) ?? []);
  if (fits.length === 0) return null;
  return together(
    fits.map(({ parameters, errors, freedom }) => ({ value: parameters[0] ?? 0, error: errors[0] ?? 0, freedom })),
  );
}

function drawnOf({ points, ...stretch }: Stretch, fit: Fitted | null, isLeftOut: boolean): FittedStretch {
  return {
    ...stretch,
    what: 'nothing heated or cooled it',
    points: points.map((point, i) => ({ ...point, fitted: fit?.fitted[i] ?? point.value })),
    value: fit?.parameters[0] ?? null,
    error: fit?.errors[0] ?? null,
    sd: fit?.sd ?? null,
    isLeftOut,
  };
}
