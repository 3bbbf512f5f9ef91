import { drainDownDepth, drainDownVolume } from '../../../water/drain-down';
import type { LineFigure } from '../../result';
import type { RuleContext } from '../rule';
import { ofType } from './equipment';
import { numbersOf } from './water';
import { figure } from './words';

/** What comes down when the return stops, and what the sump can take; m³. */
export interface Drained {
  /** Name of the sump. */
  sump: string;
  /** With every siphon break open. */
  withBreaks: number;
  /** With none counted on: down to the outlets. */
  withoutBreaks: number;
  /** Between the sump's running level and its rim. */
  space: number;
}

/** Area times depth of every tank the return feeds; null without sump or return. Gaps are filled by defaults. */
export function drained(context: RuleContext): Drained | null {
  if (ofType(context, 'return-pump').length === 0) return null;
  const { tanks } = numbersOf(context);
  const sump = tanks.find(({ tank }) => tank.role === 'sump');
  if (sump === undefined) return null;
  const fed = tanks.filter(({ share }) => share > 0);
  const sum = (depth: (tank: (typeof fed)[number]) => number) =>
    fed.reduce((total, tank) => total + drainDownVolume(tank.surface, depth(tank), 0), 0);
  return {
    sump: sump.tank.name,
    withBreaks: sum((t) => drainDownDepth(t.drainDown, t.outlet, Math.min(t.outlet, t.siphonBreak))),
    withoutBreaks: sum((t) => drainDownDepth(t.drainDown, t.outlet, t.outlet)),
    space: sump.surface * sump.rim,
  };
}

/**
 * The two volumes that may come down, the room for them, and what goes over the rim.
 * @param comes the one that comes down, m³
 */
export function drainFigures({ withBreaks, withoutBreaks, space }: Drained, comes: number): LineFigure[] {
  return [
    figure('over the rim', (comes - space) * 1000, 'L'),
    figure('drains down', withBreaks * 1000, 'L'),
    figure('drains down with siphon breaks blocked', withoutBreaks * 1000, 'L'),
    figure('room in the sump', space * 1000, 'L'),
  ];
}
