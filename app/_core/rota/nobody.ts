import type { Instant } from '../time/zone';
import { type Rota, type Turn, turnsOf } from './turns';

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
  return gapsBetween(turnsOf(rota, from, to), from, to);
}

/**
 * What a stretch of time has beside some turns.
 * @param turns in order of their start
 * @returns stretches in order, none touching the next
 */
export function gapsBetween(turns: readonly Pick<Turn, 'start' | 'end'>[], from: Instant, to: Instant): Span[] {
  const gaps: Span[] = [];
  let covered = from;
  for (const { start, end } of turns) {
    if (start >= to) break;
    if (start > covered) gaps.push({ from: covered, to: start });
    covered = Math.max(covered, end);
  }
  if (covered < to) gaps.push({ from: covered, to });
  return gaps;
}

/**
 * What of some stretches lies in none of others. Both in order, none touching the next.
 * @returns stretches in order
 */
export function spansWithout(spans: readonly Span[], others: readonly Span[]): Span[] {
  return spans.flatMap(({ from, to }) =>
    gapsBetween(
      others
        .map((other) => ({ start: other.from, end: other.to }))
        .filter(({ start, end }) => end > from && start < to),
      from,
      to,
    ),
  );
}
