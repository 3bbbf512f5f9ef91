import type { Instant } from './zone';

/**
 * Every so many minutes, whatever the clocks on the wall do: a change of the clocks moves the times they show and never
 * the spacing. "At 02:30 each night" is a rule on the wall clock instead.
 */
export interface Elapsed {
  first: Instant;
  everyMin: number;
}

/**
 * The times of a spacing within a stretch of time.
 * @param from first moment that counts
 * @param to first moment that no longer counts
 * @returns moments in order, none before the first of the spacing
 * @throws RangeError when the spacing is not above 0
 */
export function elapsedTimes({ first, everyMin }: Elapsed, from: Instant, to: Instant): Instant[] {
  if (!(everyMin > 0)) throw new RangeError(`Every ${everyMin} minutes is no spacing.`);
  const step = everyMin * 60_000;
  const skipped = Math.max(0, Math.ceil((from - first) / step));
  const times: Instant[] = [];
  for (let at = first + skipped * step; at < to; at += step) times.push(at);
  return times;
}
