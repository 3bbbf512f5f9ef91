import type { Instant } from '../time/zone';
import { type Rota, turnsOf } from './turns';

/** A stretch of time, its end not counted. */
export interface Span {
  from: Instant;
  to: Instant;
}

/**
 * When nobody is on, on site or on call, within a stretch of real time: both nights on which the clocks change have their
 * true length.
 * @param from first moment
 * @param to the moment after the last
 * @returns stretches in order, none touching the next
 * @throws RangeError when the site's zone is unknown
 */
export function nobodyOn(rota: Rota, from: Instant, to: Instant): Span[] {
  const gaps: Span[] = [];
  let covered = from;
  for (const { start, end } of turnsOf(rota, from, to)) {
    if (start > covered) gaps.push({ from: covered, to: start });
    covered = Math.max(covered, end);
  }
  if (covered < to) gaps.push({ from: covered, to });
  return gaps;
}
