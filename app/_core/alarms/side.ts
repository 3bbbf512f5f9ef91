import type { Limits } from './condition';

/** Beyond a limit; back inside it by the dead band; or between the two, which neither fires nor clears. */
export type Side = 'beyond' | 'between' | 'clear';

/**
 * On which side of its limits a value lies. Firing is beyond the limit and not at it; clearing is at the dead band's edge
 * already. Guidance differs on both; this is the choice here.
 */
export function sideOf({ above, below, from, deadBand }: Limits, value: number): Side {
  if (from !== undefined && value < from) return 'clear';
  if ((above !== undefined && value > above) || (below !== undefined && value < below)) return 'beyond';
  const isInside =
    (above === undefined || value <= above - deadBand) && (below === undefined || value >= below + deadBand);
  return isInside ? 'clear' : 'between';
}

/**
 * On which side of its watts range a draw lies, W, by whether the equipment is meant to run; null where that is not clear: then
 * only the range counts, while it draws at all.
 */
export function wattsSideOf(condition: Limits, is: 'on' | 'off' | null, value: number): Side {
  const { from = 0, ...always } = condition;
  if (is === 'off') return value > from ? 'beyond' : 'clear';
  return sideOf(is === 'on' ? always : condition, value);
}
