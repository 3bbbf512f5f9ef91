import type { Facility } from '../facility/facility';
import { addDays } from '../time/add-days';
import { type Instant, wallClock } from '../time/zone';
import { duties } from './duties';
import type { Shift } from './rota';

/** What of a facility says who is on when. */
export type Rota = Pick<Facility, 'people' | 'shifts'> & { site: Pick<Facility['site'], 'zone'> };

/** Somebody's turn of duty: from its start up to, and without, its end. */
export interface Turn {
  /** Key of the person. */
  person: string;
  kind: Shift['kind'];
  /** Key of the shift. */
  shift: string;
  /** Day on which it begins at the site, "YYYY-MM-DD". */
  date: string;
  start: Instant;
  end: Instant;
}

/**
 * The turns of everybody that touch a stretch of time, each whole. Somebody who is no longer among the people of the
 * facility has none, even where a shift still names them.
 * @param from first moment of the stretch
 * @param to the moment after its last
 * @returns turns in order of their start
 * @throws RangeError when there is no such zone
 */
export function turnsOf({ site, people, shifts }: Rota, from: Instant, to: Instant): Turn[] {
  const known = new Set(people.map(({ key }) => key));
  const byKey = new Map(shifts.map((shift) => [shift.key, shift]));
  // No turn is longer than from one day to the same time of the next: what begins earlier is over.
  const firstDay = addDays(wallClock(site.zone, from).date, -1);
  const lastDay = wallClock(site.zone, to).date;
  return duties(shifts, site.zone, firstDay, addDays(lastDay, 1)).flatMap(({ shift: key, date, start, end }) => {
    const shift = byKey.get(key);
    if (!shift || end <= from || start >= to) return [];
    const on = [...new Set(shift.people)].filter((person) => known.has(person));
    return on.map((person): Turn => ({ person, kind: shift.kind, shift: key, date, start, end }));
  });
}
