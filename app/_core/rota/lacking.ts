import type { Instant } from '../time/zone';
import { holds } from './competence';
import { gapsBetween, type Span } from './nobody';
import type { Competence } from './rota';
import { type Rota, turnsOf } from './turns';

/** When nobody who is on has a competence. */
export interface Lacking {
  /** Key of the competence. */
  competence: string;
  spans: Span[];
}

/**
 * When nobody who is on, on site or on call, has a competence, for each of those of a site. One that runs out counts through
 * turns that begin on its last day.
 * @param from first moment
 * @param to the moment after the last
 * @returns those that are lacking at some time, in the order given; stretches in order, hours with nobody among them
 * @throws RangeError when the site's zone is unknown
 */
export function lackingOn(rota: Rota, competences: readonly Competence[], from: Instant, to: Instant): Lacking[] {
  const turns = turnsOf(rota, from, to);
  const people = new Map(rota.people.map((person) => [person.key, person]));
  return competences.flatMap(({ key }) => {
    const able = turns.filter((turn) => {
      const person = people.get(turn.person);
      return person !== undefined && holds(person, key, turn.date);
    });
    const spans = gapsBetween(able, from, to);
    return spans.length > 0 ? [{ competence: key, spans }] : [];
  });
}
