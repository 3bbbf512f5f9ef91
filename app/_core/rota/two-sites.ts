import type { Instant } from '../time/zone';
import { type Rota, type Turn, turnsOf } from './turns';

/** Somebody's duties at a site: who they are on its rota. */
export interface ElsewhereRota {
  site: string;
  /** Key of the person on that rota. */
  person: string;
  rota: Rota;
  /** Minutes from one site to the other; null: nobody said. */
  wayMin: number | null;
}

/** A stretch in which one person is on at two sites, or has too little time to come from one to the other. */
export interface TwoSites {
  from: Instant;
  to: Instant;
  /** Key of the other site. */
  site: string;
  here: 'on-site' | 'on-call';
  there: 'on-site' | 'on-call';
  /** Minutes from one site to the other; null: nobody said. */
  wayMin: number | null;
  /** Whether the duties do not overlap: one ends, and the other begins before they can be there. */
  isBetween: boolean;
}

const MINUTE_MS = 60_000;

/**
 * When somebody is on at a site and at another at once: whoever goes to one leaves the other. And when they are to be on the
 * premises of both, one after the other, with less between than the way takes.
 * @param person key of the person on the first rota
 * @param from first moment
 * @param to the moment after the last
 * @returns stretches in order; nights that both rotas have, each for itself
 * @throws RangeError when a zone is unknown
 */
export function atTwoSites(
  { rota, person }: { rota: Rota; person: string },
  elsewhere: readonly ElsewhereRota[],
  from: Instant,
  to: Instant,
): TwoSites[] {
  const here = turnsOf(rota, from, to).filter((turn) => turn.person === person);
  const found = elsewhere.flatMap((other) =>
    turnsOf(other.rota, from, to)
      .filter((turn) => turn.person === other.person)
      .flatMap((there) => here.flatMap((turn) => together(turn, there, other) ?? [])),
  );
  return found.sort((a, b) => a.from - b.from);
}

function together(here: Turn, there: Turn, { site, wayMin }: ElsewhereRota): TwoSites | null {
  const [from, to] = [Math.max(here.start, there.start), Math.min(here.end, there.end)];
  const pair = { site, here: here.kind, there: there.kind, wayMin };
  if (from < to) return { from, to, ...pair, isBetween: false };
  const isOnBoth = here.kind === 'on-site' && there.kind === 'on-site';
  // From the end of the first to the beginning of the second.
  return isOnBoth && wayMin !== null && from - to < wayMin * MINUTE_MS
    ? { from: to, to: from, ...pair, isBetween: true }
    : null;
}
