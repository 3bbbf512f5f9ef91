import 'server-only';
import { ok, refused, type Result } from '#core/result';
import { instantOf } from '#core/time/zone';
import type { Refusal } from '../gate/refusal';

/** What a form may be ahead of the clock, ms: clocks differ a little. Common practice, no source. */
const AHEAD_MS = 120_000;
/** Nothing is kept of anything older. */
const OLDEST_MS = Date.UTC(1990, 0, 1);

/**
 * A moment that somebody typed as a clock of the site shows it.
 *
 * @param zone    IANA zone of the site
 * @param typed   "2026-11-25T07:14"; now when it was left empty
 * @param field   which field it was
 * @param at      now
 * @returns       ms since 1970; a refusal when it has not come yet, or lies before 1990
 */
export function momentOf(zone: string, typed: string | undefined, field: string, at: Date): Result<number, Refusal> {
  if (typed === undefined) return ok(at.getTime());
  const [date = '', time = ''] = typed.split('T');
  const instant = instantOf(zone, date, time.slice(0, 5));
  if (instant < OLDEST_MS) return refused({ why: 'invalid', faults: [{ path: field, message: 'is before 1990' }] });
  if (instant <= at.getTime() + AHEAD_MS) return ok(Math.min(instant, at.getTime()));
  return refused({ why: 'invalid', faults: [{ path: field, message: 'has not come yet' }] });
}
