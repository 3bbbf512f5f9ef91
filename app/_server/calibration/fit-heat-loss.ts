import 'server-only';
import { together } from '#core/calibration/combine';
import type { Doubt, FittedStretch, Found } from '#core/calibration/found';
import { greatest, halfOf, MOST_DOUBT } from '#core/calibration/found';
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
const LEAST_NIGHTS = 3;

/** The stretches, each with its curve, and what they say. */
export interface HeatLoss {
  stretches: FittedStretch[];
  /** Null where too few say anything, or all of them too little. */
  found: Found | null;
  /** What makes the interval too wide to be an answer; null where it is not. */
  vagueBy: string | null;
}

/**
 * Heat loss of the water that mixes, from stretches in which it cooled by itself.
 */
export function fitHeatLoss(from: HeatLossFrom): HeatLoss {
  const { tanks, resolved, stretches, leftOut } = from;
  const inUse = lossInUse(tanks);
  const fits = stretches.map((stretch) => fitOne(from, stretch, inUse, NO_SHIFT));
  const drawn = stretches.map((stretch, i) => drawnOf(stretch, fits[i] ?? null, leftOut.has(stretch.key)));
  const kept = stretches.filter(({ key }, i) => fits[i] && !leftOut.has(key));
  if (kept.length < LEAST_NIGHTS) return { stretches: drawn, found: null, vagueBy: null };
  const near = new Map(stretches.map(({ key }, i) => [key, fits[i] ?? undefined]));
  const said = saidOf(kept.flatMap(({ key }) => near.get(key) ?? []));
  if (!said) return { stretches: drawn, found: null, vagueBy: null };
  const keys = new Set(tanks.map(({ tank }) => tank.key));
  const doubts: Doubt[] = [
    { from: 'readings, and what differs from night to night', half: said.half },
    ...heldOf(resolved, keys).map(({ name, low, high }) => ({
      from: `${name}, which is held as described`,
      half: spread(
        said.value,
        [low, high].map((shift) => shifted(from, kept, inUse, shift, near)),
      ),
    })),
  ];
  const half = halfOf(doubts);
  if (half > MOST_DOUBT * said.value) return { stretches: drawn, found: null, vagueBy: greatest(doubts).from };
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
    vagueBy: null,
  };
}

/** The farther of two ends; without end where one of them explains nothing. */
function spread(value: number, ends: readonly (number | null)[]): number {
  return Math.max(...ends.map((end) => (end === null ? Number.POSITIVE_INFINITY : Math.abs(end - value))));
}

function fitOne(from: HeatLossFrom, stretch: Stretch, inUse: number, shift: Shift, near?: Fitted): Fitted | null {
  const { resolved, tanks, clockS, watts } = from;
  return fitCooling(stretch, lumpOf(resolved, tanks, clockS, watts, stretch, shift), inUse, near);
}

/** What the stretches say when something that is held is off; null where most of them then say nothing. */
function shifted(
  from: HeatLossFrom,
  kept: readonly Stretch[],
  inUse: number,
  shift: Shift,
  near: ReadonlyMap<string, Fitted | undefined>,
): number | null {
  const fits = kept.flatMap((stretch) => fitOne(from, stretch, inUse, shift, near.get(stretch.key)) ?? []);
  return fits.length * 2 < kept.length ? null : (saidOf(fits)?.value ?? null);
}

function saidOf(fits: readonly Fitted[]) {
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
