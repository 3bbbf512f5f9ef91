import type { Instant } from '../time/zone';

/** A stretch in which no loud test is to be run: from its start up to, and without, its end. */
export interface QuietSpan {
  from: Instant;
  to: Instant;
  why?: string;
}

/** The stretch of quiet that a moment lies in: of several the one that lasts longest; null when it lies in none. */
export function quietAt(spans: readonly QuietSpan[], at: Instant): QuietSpan | null {
  const on = spans.filter(({ from, to }) => from <= at && at < to);
  return on.reduce<QuietSpan | null>((last, one) => (last === null || one.to > last.to ? one : last), null);
}

/** A test is put off by so much at most: where a whole week is quiet nothing is gained by moving it. */
const MOST_MOVED_MS = 7 * 86_400_000;

/**
 * The next moment at which a loud test may be run: the moment itself, or the end of the quiet it lies in and of whatever quiet
 * follows without a break; null when none comes within a week.
 * @param spans in any order, for a week from that moment on at least
 */
export function allowedFrom(spans: readonly QuietSpan[], at: Instant): Instant | null {
  let allowed = at;
  for (let on = quietAt(spans, allowed); on !== null && allowed - at < MOST_MOVED_MS; on = quietAt(spans, allowed))
    allowed = on.to;
  return allowed - at < MOST_MOVED_MS ? allowed : null;
}
