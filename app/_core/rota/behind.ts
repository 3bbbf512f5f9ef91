import type { Instant } from '../time/zone';
import type { DutyException } from './rota';
import { type Rota, type Turn, turnsOf } from './turns';

/**
 * The swaps and leave that are behind who is on in a stretch of time: each without which other people would be on then, or for
 * another time. In the order in which they were approved.
 *
 * @param from first moment
 * @param to the moment after the last
 * @throws RangeError when there is no such zone
 */
export function behind(rota: Rota, from: Instant, to: Instant): DutyException[] {
  const really = said(turnsOf(rota, from, to), from, to);
  return rota.exceptions.filter((one) => {
    const exceptions = rota.exceptions.filter((other) => other !== one);
    return said(turnsOf({ ...rota, exceptions }, from, to), from, to) !== really;
  });
}

/** Who is on in a stretch, as text. */
function said(turns: readonly Turn[], from: Instant, to: Instant): string {
  const parts = turns.map(
    ({ person, kind, start, end }) => `${person} ${kind} ${Math.max(start, from)} ${Math.min(end, to)}`,
  );
  return [...new Set(parts)].sort().join('|');
}
