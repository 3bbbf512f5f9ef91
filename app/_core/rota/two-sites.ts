import type { Instant } from '../time/zone';
import { type Rota, turnsOf } from './turns';

/** Somebody's duties at a site: who they are on its rota. */
export interface ElsewhereRota {
  site: string;
  /** Key of the person on that rota. */
  person: string;
  rota: Rota;
}

/** A stretch in which one person is on at two sites. */
export interface TwoSites {
  from: Instant;
  to: Instant;
  /** Key of the other site. */
  site: string;
  here: 'on-site' | 'on-call';
  there: 'on-site' | 'on-call';
}

/**
 * When somebody is on at a site and at another at once: whoever goes to one leaves the other.
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
      .flatMap((there) =>
        here
          .filter(({ start, end }) => start < there.end && there.start < end)
          .map(
            ({ start, end, kind }): TwoSites => ({
              from: Math.max(start, there.start),
              to: Math.min(end, there.end),
              site: other.site,
              here: kind,
              there: there.kind,
            }),
          ),
      ),
  );
  return found.sort((a, b) => a.from - b.from);
}
