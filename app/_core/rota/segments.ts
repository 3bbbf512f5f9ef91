import type { Instant } from '../time/zone';
import { type Rota, type Turn, turnsOf } from './turns';

/** A stretch of time in which the same people are on throughout, its end not counted. Keys in the order of the people. */
export interface Segment {
  from: Instant;
  to: Instant;
  onSite: string[];
  /** Those who are on call and not on site. */
  onCall: string[];
}

/**
 * Who is on, stretch by stretch, without a hole: where nobody is, both lists are empty.
 * @param from first moment
 * @param to the moment after the last
 * @returns stretches in order, each beginning where the one before ends
 * @throws RangeError when the site's zone is unknown
 */
export function segmentsOf(rota: Rota, from: Instant, to: Instant): Segment[] {
  const turns = turnsOf(rota, from, to);
  const ends = turns.flatMap(({ start, end }) => [start, end]).filter((at) => at > from && at < to);
  const edges = [...new Set([from, ...ends, to])].sort((a, b) => a - b);
  const segments: Segment[] = [];
  for (const [place, edge] of edges.entries()) {
    const next = edges[place + 1];
    if (next === undefined) continue;
    const fresh = { from: edge, to: next, ...peopleOn(rota, turns, edge) };
    const last = segments.at(-1);
    if (last && isSame(last, fresh)) last.to = next;
    else segments.push(fresh);
  }
  return segments;
}

function peopleOn({ people }: Rota, turns: readonly Turn[], at: Instant): Pick<Segment, 'onSite' | 'onCall'> {
  const on = turns.filter(({ start, end }) => start <= at && at < end);
  const keys = (kind: Turn['kind']) => new Set(on.filter((turn) => turn.kind === kind).map(({ person }) => person));
  const [site, call] = [keys('on-site'), keys('on-call')];
  const inOrder = people.map(({ key }) => key);
  return {
    onSite: inOrder.filter((key) => site.has(key)),
    onCall: inOrder.filter((key) => call.has(key) && !site.has(key)),
  };
}

function isSame(a: Segment, b: Segment): boolean {
  return a.onSite.join() === b.onSite.join() && a.onCall.join() === b.onCall.join();
}
