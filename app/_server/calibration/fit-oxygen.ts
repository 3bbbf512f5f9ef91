import 'server-only';
import { factorsAt, gasInUse } from '#core/calibration/gas';
import { mixedWith } from '#core/calibration/lump';
import { oxygenAfter } from '#core/calibration/oxygen-curve';
import type { OxygenStretch } from '#core/calibration/oxygen-stretches';
import { leastStep } from '#core/calibration/stretch';
import type { ResolvedSystem, ResolvedTank } from '#core/equipment/resolved';
import { type Curve, type Fitted, fitCurve } from './fit-curve';

/** What one stretch says. */
export interface OxygenFit {
  fitted: number[];
  sd: number;
  freedom: number;
  /** L/h at 20 °C; null where the transfer was held. */
  transfer: { value: number; error: number } | null;
  /** mg/h at 20 °C. */
  use: { value: number; error: number };
}

/** Ends of what is looked for: 1/h, and mg/L in an hour. */
const TRANSFER = [0.001, 60] as const;
const USE = [0.001, 100] as const;
/** Standard deviation of a probe that always shows the same, mg/L. Common practice, no source. */
const LEAST_SD = 0.01;

/**
 * The tanks that mix during a stretch: without its return, the tank of the probe alone.
 *
 * @param key   of the tank that the probe sits in
 */
export function tanksOf(resolved: ResolvedSystem, key: string, { stopped }: OxygenStretch): readonly ResolvedTank[] {
  const mixed = mixedWith(resolved, key);
  const returns = resolved.devices.filter(({ equipment }) => equipment.type === 'return-pump');
  const isParted = returns.length === 1 && returns[0]?.equipment.key === stopped;
  return isParted ? mixed.filter(({ tank }) => tank.key === key) : mixed;
}

/**
 * Fits one stretch. While something stands there is too little time to tell transfer from use: what is left of the transfer is
 * then held as described.
 *
 * @param waterC   °C of the water meanwhile
 * @param part     of the transfer that is held, of what is described
 */
export function fitOxygen(
  resolved: ResolvedSystem,
  tankKey: string,
  stretch: OxygenStretch,
  waterC: number,
  part = 1,
): OxygenFit | null {
  const tanks = tanksOf(resolved, tankKey, stretch);
  const gas = gasInUse(resolved, tanks, stretch.stopped);
  const at = factorsAt(resolved, waterC);
  const litres = 1000 * gas.volume;
  const heldPerH = (part * gas.transferLPerH * at.transfer) / litres;
  const usePerH = Math.max(0.05, (gas.useMgPerH * at.use) / litres);
  const [first] = stretch.points;
  const values = stretch.points.map(({ value }) => value);
  const hours = stretch.points.map(({ atMs }) => (atMs - (first?.atMs ?? 0)) / 3_600_000);
  const isHeld = stretch.why === 'stopped';
  const line = (transferPerH: number, use: number, start: number) =>
    hours.map((h) => oxygenAfter({ transferPerH, usePerH: use, start }, at.saturation, h));
  const start = Math.max(0.1, values[0] ?? 0);
  const leastSd = Math.max(LEAST_SD, leastStep(stretch.points) / Math.sqrt(12));
  const curve: Pick<Curve, 'at' | 'starts' | 'least' | 'most'> = isHeld
    ? { at: ([r = 0, c = 0]) => line(heldPerH, r, c), starts: [usePerH, start], least: [USE[0], 0], most: [USE[1], 40] }
    : {
        at: ([k = 0, r = 0, c = 0]) => line(k, r, c),
        starts: [Math.max(0.05, heldPerH), usePerH, start],
        ...{ least: [TRANSFER[0], USE[0], 0], most: [TRANSFER[1], USE[1], 40] },
      };
  const found = fitCurve({ values, leastSd, ...curve });
  if (!found) return null;
  const { fitted, sd, freedom } = found;
  const transfer = isHeld ? null : saidOf(found, 0, litres / at.transfer);
  return { fitted, sd, freedom, transfer, use: saidOf(found, isHeld ? 0 : 1, litres / at.use) };
}

/** A parameter and its error, times a factor. */
function saidOf({ parameters, errors }: Fitted, i: number, factor: number): { value: number; error: number } {
  return { value: (parameters[i] ?? 0) * factor, error: (errors[i] ?? 0) * factor };
}
