import type { LimitQuantity } from '#core/facility/stock';
import type { Tank } from '#core/facility/system';
import type { CaseTrajectory, Track } from '#core/review/trajectory';
import type { Custom } from '#core/units/shown';
import { inUnits, symbolOf } from '../units/figures';

/** One chart: a quantity in every tank it was followed in, in the person's unit. */
export interface QuantityChart {
  quantity: Track['quantity'];
  title: string;
  unit: string;
  decimals: number;
  tracks: { tank: string; timesS: number[]; values: number[] }[];
  limits: { value: number; direction: 'above' | 'below'; forMin: number }[];
  /** Lowest and highest value to be drawn. */
  domain: [number, number];
}

const TITLES: Record<Track['quantity'], string> = {
  temperature: 'Temperature',
  oxygen: 'Oxygen',
  salinity: 'Salinity',
  level: 'Level, from the running level',
};
/** Narrowest range worth drawing, in the core's unit, so that noise is not drawn as a storm. */
const NARROWEST: Record<Track['quantity'], number> = { temperature: 2, oxygen: 2, salinity: 1, level: 40 };
const DECIMALS: Record<Track['quantity'], number> = { temperature: 1, oxygen: 1, salinity: 1, level: 0 };

/**
 * The charts of a course, the quantity that does the harm first.
 * @param harm what the gravest harm is of; undefined without harm
 * @param main the tank that is harmed first: its limits are drawn
 */
export function chartsOf(
  trajectory: CaseTrajectory,
  harm: LimitQuantity | 'water-on-floor' | 'pump-dry' | undefined,
  units: Custom,
  main: Tank | undefined,
): QuantityChart[] {
  const first = harmedQuantity(harm);
  const order = (['temperature', 'oxygen', 'salinity', 'level'] as const).filter((q) =>
    trajectory.tracks.some((t) => t.quantity === q && !isFresh(t)),
  );
  return order
    .sort((a, b) => Number(b === first) - Number(a === first))
    .map((quantity) => chartOf(trajectory, quantity, units, quantity === first, main));
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
  trajectory: CaseTrajectory,
  quantity: Track['quantity'],
  units: Custom,
  harmed: boolean,
  main: Tank | undefined,
): QuantityChart {
  const own = trajectory.tracks.filter((t) => t.quantity === quantity);
  const shown = (value: number) =>
    quantity === 'temperature'
      ? inUnits(units, 'temperature', value)
      : quantity === 'level'
        ? inUnits(units, 'length', value)
        : value;
  const all = own.flatMap((t) => t.values);
  const limits = own
    .filter((t) => t.tank === main?.key)
    .flatMap((t) => t.limits.map((l) => ({ ...l, value: quantity === 'level' ? levelAt(l.value, main) : l.value })));
  const [low, high] = domainOf(
    all,
    limits.map((l) => l.value),
    NARROWEST[quantity],
    harmed,
  );
  return {
    quantity,
    title: TITLES[quantity],
    unit:
      quantity === 'temperature'
        ? symbolOf(units, 'temperature')
        : quantity === 'level'
          ? symbolOf(units, 'length')
          : quantity === 'oxygen'
            ? 'mg/L'
            : '',
    decimals: quantity === 'level' && units === 'us' ? 1 : DECIMALS[quantity],
    tracks: own.map((t) => ({ tank: t.tank, timesS: t.timesS, values: t.values.map(shown) })),
    limits: limits
      .filter((l) => l.value >= low && l.value <= high)
      .map((l) => ({ value: shown(l.value), direction: l.direction, forMin: l.forMin })),
    domain: [shown(low), shown(high)],
  };
}

/** Where the level stands, mm from the running level, when a part of a tank's water is left. */
function levelAt(part: number, tank: Tank | undefined): number {
  const { volumeL, surfaceM2 } = tank ?? {};
  return ((part - 1) * (volumeL?.value ?? 0)) / (surfaceM2?.value ?? 1);
}

/** The values, widened to the limits that are near; the quantity that does the harm always shows its nearest limit. */
function domainOf(values: number[], limits: number[], narrowest: number, harmed: boolean): [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const span = Math.max(high - low, narrowest);
  const middle = (low + high) / 2;
  const distance = (limit: number) => Math.max(low - limit, limit - high, 0);
  const nearest = [...limits].sort((a, b) => distance(a) - distance(b))[0];
  const near = limits.filter((limit) => distance(limit) <= 0.6 * span || (harmed && limit === nearest));
  return [Math.min(middle - span / 2, ...near) - 0.08 * span, Math.max(middle + span / 2, ...near) + 0.08 * span];
}
