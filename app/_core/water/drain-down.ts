import { type Law, law } from './law';

/**
 * How far a tank's level falls when the return stops: to the overflow's crest, and on while the return pipe siphons
 * back, until air gets in at the siphon break or at the outlet, whichever is uncovered first.
 *
 *   depth = max(crest, min(outlet, break))
 *
 * @param crest       m below the running level; 0 to 10
 * @param outlet      m below the running level, of the return's mouth; 0 to 10 (at or above the crest: no siphon)
 * @param siphonBreak m below the running level; 0 to 10 (no break, or a blocked one: give the outlet again)
 * @returns           m below the running level
 *
 * Holds      for one return; of several, the deepest counts. Beyond the range: the same; above the running level counts
 *            as at it.
 * Leaves out check valves, which are not to be relied on.
 * Source     Geometry.
 * Checked    tests/core/water/drain-down.test.ts.
 */
export function drainDownDepth(crest: number, outlet: number, siphonBreak: number): number {
  return Math.max(0, crest, Math.min(outlet, siphonBreak));
}

/**
 * Water that comes down when the return stops.
 *
 *   V = area · depth + pipes
 *
 * @param area  m² of the water surface, all tanks of this depth together; 0 to 100 000
 * @param depth m  from `drainDownDepth`; 0 to 10
 * @param pipes m³ that stands in the pipes and runs down too; 0 to 1000
 * @returns     m³ that the sump must hold above its running level
 *
 * Holds      for upright walls. Beyond the range: less than nothing counts as nothing.
 * Leaves out rock that stands in the falling layer, which makes it less, and the waves of the surge.
 * Source     Geometry.
 * Checked    tests/core/water/drain-down.test.ts.
 */
export function drainDownVolume(area: number, depth: number, pipes: number): number {
  return Math.max(0, area) * Math.max(0, depth) + Math.max(0, pipes);
}

export const drainDownDepthLaw: Law<[crest: number, outlet: number, siphonBreak: number]> = law(
  'drain-down-depth',
  'm',
  drainDownDepth,
  [
    { name: 'crest', unit: 'm', low: 0, high: 10 },
    { name: 'outlet', unit: 'm', low: 0, high: 10 },
    { name: 'siphonBreak', unit: 'm', low: 0, high: 10 },
  ],
);

export const drainDownVolumeLaw: Law<[area: number, depth: number, pipes: number]> = law(
  'drain-down-volume',
  'm³',
  drainDownVolume,
  [
    { name: 'area', unit: 'm²', low: 0, high: 1e5 },
    { name: 'depth', unit: 'm', low: 0, high: 10 },
    { name: 'pipes', unit: 'm³', low: 0, high: 1000 },
  ],
);
