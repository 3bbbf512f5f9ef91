import type { AnsweredBy } from '../facility/site';
import { HOUR, HOURS_OF_WEEK, WEEK } from '../time/week';
import { type Answering, answering, type Home, type Stretch } from './answering';
import type { Cover } from './cover';

/** An hour at which a fault may begin: s from the line's beginning, and the hour of the day that the clock on the wall shows. */
export interface LineHour {
  atS: number;
  hourOfDay: number;
}

/** A week of duties, with what lies before and after it as far as faults of the week ask for it. */
export interface Line {
  hours: LineHour[];
  stretches: Stretch[];
  homes: Home[];
}

/** Weeks that lie before the hours of a line, so that a duty under way is there, and after: a fault is followed for one, a call waits another. */
const [BEFORE, AFTER] = [1, 3];

/** The usual week as a line from Monday 00:00 on the wall: every week before and after is the same. */
export function usualLine({ duties, fromHome, answerFromHomeS }: Cover): Line {
  const weeks = Array.from({ length: BEFORE + AFTER }, (_, week) => (week - BEFORE) * WEEK);
  const stretches = weeks.flatMap((s) =>
    duties.map(
      ({ fromS, lengthS, kind, person, answerS, responseS }): Stretch => ({
        ...{ kind, person, answerS, travelS: responseS - answerS },
        ...{ fromS: s + fromS, toS: s + fromS + lengthS },
      }),
    ),
  );
  const hours = Array.from({ length: HOURS_OF_WEEK }, (_, h) => ({ atS: h * HOUR, hourOfDay: h % 24 }));
  return { hours, stretches, homes: homesOf(fromHome, answerFromHomeS) };
}

/** What everybody needs from home. @param answerS of it, to have understood and to leave */
export function homesOf(fromHome: ReadonlyMap<string, number>, answerS: number): Home[] {
  return [...fromHome].map(([person, s]) => ({ person, answerS, travelS: s - answerS }));
}

/** Asks who comes first on a line, by who answers; each kind of question is worked out once. */
export function asking(
  { stretches, homes }: Line,
  able: (person: string) => boolean = () => true,
): (answeredBy: AnsweredBy) => Answering {
  const known = new Map<string, Answering>();
  return (answeredBy) => {
    const id = String(answeredBy);
    const found = known.get(id) ?? answering(stretches, homes, answeredBy, able);
    known.set(id, found);
    return found;
  };
}
