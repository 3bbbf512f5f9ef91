import { extent } from 'd3-array';
import type { Tank } from '#core/facility/system';
import type { Harm } from '#core/review/result';
import type { CaseTrajectory, Track } from '#core/review/trajectory';
import type { Custom } from '#core/units/shown';
import { inUnits, symbolOf } from '../units/figures';
import { type ChartLimit, limitsOf } from './chart-limits';

/** One chart: a quantity in every tank it was followed in, in the person's unit. */
export interface QuantityChart {
  quantity: Track['quantity'];
  title: string;
  unit: string;
  decimals: number;
  tracks: { tank: string; timesS: number[]; values: number[] }[];
  limits: ChartLimit[];
  /** Lowest and highest value to be drawn. */
  domain: [number, number];
}

const QUANTITIES = ['temperature', 'oxygen', 'salinity', 'level'] as const;
const TITLES: Record<Track['quantity'], string> = {
  temperature: 'Temperature',
  oxygen: 'Oxygen',
  salinity: 'Salinity',
  level: 'Level, from the running level',
};
/** Narrowest range worth drawing, in the core's unit, so that noise is not drawn as a storm. */
const NARROWEST: Record<Track['quantity'], number> = { temperature: 2, oxygen: 2, salinity: 1, level: 40 };

/** What charts are made from. */
interface Drawn {
  trajectory: CaseTrajectory;
  /** The gravest harm; undefined without one. */
  harm: Harm | undefined;
  units: Custom;
  /** The tank that is harmed first: its limits are drawn. */
  main: Tank | undefined;
}

/** The charts of a course, the quantity that does the harm first. */
export function chartsOf(drawn: Drawn): QuantityChart[] {
  const first = harmedQuantity(drawn.harm?.what);
  return QUANTITIES.filter((q) => drawn.trajectory.tracks.some((t) => t.quantity === q && !isFresh(t)))
    .sort((a, b) => Number(b === first) - Number(a === first))
    .map((quantity) => chartOf(drawn, quantity, quantity === first));
}

function harmedQuantity(harm: string | undefined): Track['quantity'] {
  if (harm === 'oxygen' || harm === 'salinity' || harm === 'level') return harm;
  return harm === 'water-on-floor' || harm === 'pump-dry' ? 'level' : 'temperature';
}

/** Salinity of fresh water says nothing. */
function isFresh(track: Track): boolean {
  return track.quantity === 'salinity' && track.values.every((v) => v < 0.5);
}

function chartOf(
  { trajectory, harm, units, main }: Drawn,
  quantity: Track['quantity'],
  isHarmed: boolean,
): QuantityChart {
  const own = trajectory.tracks.filter((t) => t.quantity === quantity);
  const kind = quantity === 'temperature' ? 'temperature' : quantity === 'level' ? 'length' : null;
  const shown = (value: number) => (kind ? inUnits(units, kind, value) : value);
  const limits = limitsOf(trajectory, quantity, main, harm, units);
  const reach = limits.map((l) => l.value);
  const [low, high] = domainOf(
    own.flatMap((t) => t.values),
    reach,
    NARROWEST[quantity],
    isHarmed,
  );
  return {
    quantity,
    title: TITLES[quantity],
    unit: kind ? symbolOf(units, kind) : quantity === 'oxygen' ? 'mg/L' : '',
    decimals: quantity === 'level' && units === 'metric' ? 0 : 1,
    tracks: own.map((t) => ({ tank: t.tank, timesS: t.timesS, values: t.values.map(shown) })),
    limits: limits.filter((l) => l.value >= low && l.value <= high).map((l) => ({ ...l, value: shown(l.value) })),
    domain: [shown(low), shown(high)],
  };
}

/** The values, widened to the limits that are near; the quantity that does the harm always shows its nearest limit. */
function domainOf(values: number[], limits: number[], narrowest: number, isHarmed: boolean): [number, number] {
  const [low = 0, high = 0] = extent(values);
  const span = Math.max(high - low, narrowest);
  const middle = (low + high) / 2;
  const distance = (limit: number) => Math.max(low - limit, limit - high, 0);
  const nearest = [...limits].sort((a, b) => distance(a) - distance(b))[0];
  const near = limits.filter((limit) => distance(limit) <= 0.6 * span || (isHarmed && limit === nearest));
  return [Math.min(middle - span / 2, ...near) - 0.08 * span, Math.max(middle + span / 2, ...near) + 0.08 * span];
}
