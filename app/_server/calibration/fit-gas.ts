import 'server-only';
import { together } from '#core/calibration/combine';
import {
  type Calibration,
  type Doubt,
  type FittedStretch,
  type Found,
  greatest,
  halfOf,
  MOST_DOUBT,
} from '#core/calibration/found';
import { gasInUse } from '#core/calibration/gas';
import { heldOf } from '#core/calibration/held';
import { mixedWith } from '#core/calibration/lump';
import type { OxygenStretch } from '#core/calibration/oxygen-stretches';
import type { Point } from '#core/calibration/stretch';
import { standingAt } from '#core/calibration/used';
import type { ResolvedSystem } from '#core/equipment/resolved';
import { fitOxygen, type OxygenFit, tanksOf } from './fit-oxygen';

/** What gas exchange and use of oxygen are fitted from. */
export interface GasFrom {
  resolved: ResolvedSystem;
  /** Key of the tank that the probe sits in. */
  tank: string;
  stretches: readonly OxygenStretch[];
  /** °C of the water, in order of time; empty where no probe tells. */
  temperature: readonly Point[];
  leftOut: ReadonlySet<string>;
}

/** Stretches below which nothing is said. Common practice, no source. */
const LEAST_STRETCHES = 2;
/** Parts of the transfer described that may be left while something stands. Common practice, no source. */
const HELD = [0.5, 1.5] as const;

const WORDS: Record<OxygenStretch['why'], string> = {
  'lights-out': 'went out',
  stopped: 'stood',
  'started-again': 'ran again',
};

/** Which stretches say anything of a figure: the use of a tank alone is not that of a whole system. */
type Of = Extract<Calibration, 'oxygen-transfer' | 'oxygen-use'>;

/**
 * Gas exchange, or use of oxygen, from what oxygen did after lamps went out or something stopped or ran again.
 *
 * @returns   the stretches, each with its curve; and what they say, null where too few say anything
 */
export function fitGas(
  from: GasFrom,
  is: Of,
): { stretches: FittedStretch[]; found: Found | null; vagueBy: string | null } {
  const { resolved, tank, stretches, leftOut } = from;
  const whole = mixedWith(resolved, tank);
  const usable = stretches.filter((stretch) => tanksOf(resolved, tank, stretch).length === whole.length);
  const fits = usable.map((stretch) => fitAt(from, stretch));
  const drawn = usable.map((stretch, i) => drawnOf(stretch, fits[i] ?? null, is, leftOut.has(stretch.key)));
  const kept = usable.filter(({ key }, i) => saidOf(fits[i] ?? null, is) && !leftOut.has(key));
  const shown = drawn.filter(({ value, isLeftOut }) => value !== null || isLeftOut || is === 'oxygen-transfer');
  const said = saidBy(from, kept, is);
  if (!said || kept.length < LEAST_STRETCHES) return { stretches: shown, found: null, vagueBy: null };
  const inUse = gasInUse(resolved, whole, null);
  const volume = heldOf(resolved, new Set(whole.map((one) => one.tank.key))).find(({ name }) => /volume/.test(name));
  const ends = [volume?.low.volume ?? 1, volume?.high.volume ?? 1].map((part) => Math.abs(part - 1));
  const doubts: Doubt[] = [
    { from: 'readings, and what differs from one stretch to the next', half: said.half },
    { from: 'volume of water, which is held as described', half: said.value * Math.max(...ends) },
    ...heldTransfer(from, kept, is, said.value),
  ];
  const half = halfOf(doubts);
  if (half > MOST_DOUBT * said.value) return { stretches: shown, found: null, vagueBy: greatest(doubts).from };
  const found: Found = {
    is,
    unit: is === 'oxygen-use' ? 'mg/h' : 'L/h',
    value: said.value,
    low: Math.max(0, said.value - half),
    high: said.value + half,
    doubts,
    inUse: is === 'oxygen-use' ? inUse.useMgPerH : inUse.transferLPerH,
  };
  return { stretches: shown, found, vagueBy: null };
}

/** What transfer was held at while something stood is only known so well. */
function heldTransfer(from: GasFrom, kept: readonly OxygenStretch[], is: Of, value: number): Doubt[] {
  if (is === 'oxygen-transfer' || kept.every(({ why }) => why !== 'stopped')) return [];
  const ends = HELD.map((part) => saidBy(from, kept, is, part)?.value ?? value);
  return [
    {
      from: 'what else brings oxygen meanwhile, which is held as described',
      half: Math.max(...ends.map((end) => Math.abs(end - value))),
    },
  ];
}

function fitAt({ resolved, tank, temperature }: GasFrom, stretch: OxygenStretch, part = 1): OxygenFit | null {
  const middleMs = (stretch.fromMs + stretch.toMs) / 2;
  return fitOxygen(resolved, tank, stretch, standingAt(temperature, resolved.temperature)(middleMs), part);
}

function saidOf(fit: OxygenFit | null, is: Of): { value: number; error: number } | null {
  const said = is === 'oxygen-use' ? fit?.use : fit?.transfer;
  // What is no better known than by a factor of ten is no answer.
  return said && said.error < 5 * said.value ? said : null;
}

function saidBy(from: GasFrom, kept: readonly OxygenStretch[], is: Of, part = 1) {
  const all = kept.flatMap((stretch) => {
    const fit = fitAt(from, stretch, part);
    const said = saidOf(fit, is);
    return fit && said ? [{ ...said, freedom: fit.freedom }] : [];
  });
  return all.length === 0 ? null : together(all);
}

function drawnOf(
  { why, by, stopped: _stopped, points, ...stretch }: OxygenStretch,
  fit: OxygenFit | null,
  is: Of,
  isLeftOut: boolean,
): FittedStretch {
  const said = saidOf(fit, is);
  return {
    ...stretch,
    what: `${by} ${WORDS[why]}`,
    points: points.map((point, i) => ({ ...point, fitted: fit?.fitted[i] ?? point.value })),
    value: said?.value ?? null,
    error: said?.error ?? null,
    sd: fit?.sd ?? null,
    isLeftOut,
  };
}
