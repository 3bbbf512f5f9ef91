import type { Tank } from '#core/facility/system';
import type { Harm } from '#core/review/result';
import type { CaseTrajectory, Track } from '#core/review/trajectory';
import type { Custom } from '#core/units/shown';
import { figure } from '../units/figures';
import { lastingFor } from '../words/lasting';

/** A limit of tolerance as a line on a chart, in the core's unit. */
export interface ChartLimit {
  value: number;
  direction: 'above' | 'below';
  says: string;
}

/**
 * The limits to be drawn beside one quantity of the tank that is harmed first.
 * @param harm the gravest harm; a greatest change within a day is drawn from the value at the onset
 */
export function limitsOf(
  trajectory: CaseTrajectory,
  quantity: Track['quantity'],
  main: Tank | undefined,
  harm: Harm | undefined,
  units: Custom,
): ChartLimit[] {
  const track = trajectory.tracks.find((t) => t.quantity === quantity && t.tank === main?.key);
  if (!track) return [];
  const own = track.limits.map(({ value, direction, forMin }) => ({
    value: quantity === 'level' ? levelAt(value, main) : value,
    direction,
    says: `${direction} ${said(quantity, value, units)}${forMin > 0 ? ` for ${lastingFor(forMin)}` : ''}`,
  }));
  return [...own, ...changeWithinADay(track, harm, units)];
}

function said(quantity: Track['quantity'], value: number, units: Custom): string {
  switch (quantity) {
    case 'temperature':
      return figure(units, 'temperature', value);
    case 'oxygen':
      return `${value}\u00a0mg/L`;
    case 'level':
      return `${Math.round(value * 100)}\u00a0% of its water`;
    case 'salinity':
      return String(value);
  }
}

function changeWithinADay(
  { quantity, values: [start = 0] }: Track,
  harm: Harm | undefined,
  units: Custom,
): ChartLimit[] {
  if (quantity !== 'temperature' || (harm?.what !== 'rise-24h' && harm?.what !== 'fall-24h')) return [];
  const change = figure(units, 'difference', harm.limit);
  const isRise = harm.what === 'rise-24h';
  return [
    {
      value: isRise ? start + harm.limit : start - harm.limit,
      direction: isRise ? 'above' : 'below',
      says: `${isRise ? 'warmer' : 'colder'} by ${change} in a day`,
    },
  ];
}

/** Where the level stands, mm from the running level, when a part of a tank's water is left. */
function levelAt(part: number, tank: Tank | undefined): number {
  const { volumeL, surfaceM2 } = tank ?? {};
  return ((part - 1) * (volumeL?.value ?? 0)) / (surfaceM2?.value ?? 1);
}
