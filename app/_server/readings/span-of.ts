import 'server-only';
import { type Span, SPANS } from '#core/readings/spans';
import { addDays } from '#core/time/add-days';
import { dayStart } from '#core/time/zone';
import { dayIn } from '../local-day';

/** A span of whole days at a place. */
export interface SpanThere {
  from: Date;
  to: Date;
  /** ISO dates of the first and the last day, of the spans before and after; null when the one after lies ahead. */
  first: string;
  last: string;
  earlier: string;
  later: string | null;
}

/**
 * The span of whole days that ends with a day.
 *
 * @param zone    IANA zone
 * @param until   ISO date of the last day; today when left out, and when it lies ahead
 */
export function spanOf(zone: string, span: Span, until: string | undefined, now: Date): SpanThere {
  const { days } = SPANS[span];
  const today = dayIn(zone, now);
  const last = until !== undefined && until < today ? until : today;
  const first = addDays(last, 1 - days);
  const later = addDays(last, days);
  return {
    from: new Date(dayStart(zone, first)),
    to: new Date(dayStart(zone, addDays(last, 1))),
    first,
    last,
    earlier: addDays(first, -1),
    later: last === today ? null : earlierOf(later, today),
  };
}

function earlierOf(one: string, other: string): string {
  return one < other ? one : other;
}
