import type { Context } from './context';
import { concerned, IN_PLACE } from './in-place';
import table from './remedies.json';
import type { FaultCase, Outcome } from './result';
import { worstHour } from './words';

/** Id of a remedy. */
export type RemedyId = keyof typeof table;

/** What to do, in words. */
export function remedyText(id: RemedyId): string {
  return table[id];
}

/** Whether a text is the id of a remedy. */
export function isRemedy(id: string): id is RemedyId {
  return id in table;
}

/**
 * What to do about an outcome of a fault case: the most direct of its fault's remedies that is not in place already; with all
 * of them in place, whatever shortens what takes too long.
 */
export function remedyFor(context: Context, c: FaultCase, outcome: Outcome): RemedyId {
  const about = concerned(context, c.thing);
  const open = c.remedies.filter(isRemedy).find((id) => !IN_PLACE[id]?.(context, about));
  return open ?? whatTakesTooLong(outcome);
}

function whatTakesTooLong(outcome: Outcome): RemedyId {
  const h = worstHour(outcome);
  const last = outcome.lastChanceS[h] ?? 0;
  if (last <= 0) return 'second-line';
  return (outcome.noticeS[h] ?? Number.POSITIVE_INFINITY) < last ? 'quicker-hands' : 'earlier-warning';
}
