import type { Facility } from '../facility/facility';
import { WEEK, weekSecond } from '../time/week';
import { dayOf } from '../time/day-of';
import { wallClock } from '../time/zone';
import type { Away, PersonApart } from './rota';
import type { Turn } from './turns';

/** Somebody's turn on site at another site, and the way from there, s. */
export interface AwayTurn extends Pick<Turn, 'start' | 'end'> {
  /** Key of the person on the rota that is looked at. */
  person: string;
  wayS: number;
}

/**
 * When somebody is at another site in the usual week, on the clocks of the site that is looked at.
 * @param zone IANA zone of that site
 * @param turns those of one week, on site elsewhere
 * @throws RangeError when there is no such zone
 */
export function awayWeek(zone: string, turns: readonly AwayTurn[]): Away[] {
  return turns.map(({ start, end, wayS }) => {
    const { date, time } = wallClock(zone, start);
    return { fromS: weekSecond(dayOf(date), time), lengthS: (end - start) / 1000, wayS };
  });
}

/** A site whose people are away when the rota of another has them on site. @param away   by key of the person */
export function withAway(facility: Facility, away: ReadonlyMap<string, Away[]>): Facility {
  if (away.size === 0) return facility;
  const people = facility.people.map((person): PersonApart => {
    const own = away.get(person.key);
    return own ? { ...person, away: own } : person;
  });
  return { ...facility, people };
}

/** A stretch of duty, and the way from another site where they are meanwhile; null: they are at none. */
export interface Apart {
  fromS: number;
  toS: number;
  wayS: number | null;
}

/**
 * A stretch of the usual week cut where somebody is at another site, s since Monday 00:00.
 * @param toS may lie after the end of the week
 */
export function cutByAway(fromS: number, toS: number, away: readonly Away[] = []): Apart[] {
  const weeks = away.flatMap(({ fromS: begins, lengthS, wayS }) =>
    [-WEEK, 0, WEEK].map((shift) => ({ fromS: begins + shift, toS: begins + shift + lengthS, wayS })),
  );
  return cut(fromS, toS, weeks);
}

/** Turns of a rota cut where whoever has them is at another site: such a part says the way from there. */
export function turnsApart(turns: readonly Turn[], away: readonly AwayTurn[]): Turn[] {
  return turns.flatMap((turn) => {
    const own = away.filter(({ person }) => person === turn.person);
    const spans = own.map(({ start, end, wayS }) => ({ fromS: start / 1000, toS: end / 1000, wayS }));
    return cut(turn.start / 1000, turn.end / 1000, spans).map(({ fromS, toS, wayS }): Turn => {
      const part = { ...turn, start: fromS * 1000, end: toS * 1000 };
      return wayS === null ? part : { ...part, apartS: wayS };
    });
  });
}

/** Of two other sites at once the longer way counts. */
function cut(fromS: number, toS: number, spans: readonly { fromS: number; toS: number; wayS: number }[]): Apart[] {
  const inside = spans.flatMap((one) => [one.fromS, one.toS]).filter((s) => s > fromS && s < toS);
  const edges = [...new Set([fromS, ...inside, toS])].sort((a, b) => a - b);
  return edges.slice(1).map((to, i) => {
    const from = edges[i] ?? fromS;
    const ways = spans.flatMap((one) => (one.fromS <= from && from < one.toS ? [one.wayS] : []));
    return { fromS: from, toS: to, wayS: ways.length > 0 ? Math.max(...ways) : null };
  });
}
