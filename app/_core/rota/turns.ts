import type { Facility } from '../facility/facility';
import { lastFor } from '../last-for';
import { addDays } from '../time/add-days';
import { type Instant, wallClock } from '../time/zone';
import { type Duty, duties } from './duties';
import type { DutyException } from './rota';

/** Who is on when: what a facility describes, and the swaps and leave that were approved since. */
export type Rota = Pick<Facility, 'people' | 'shifts'> & {
  site: Pick<Facility['site'], 'zone'>;
  /** In the order in which they were approved. */
  exceptions: readonly DutyException[];
};

/** Somebody's turn of duty: from its start up to, and without, its end. It is remembered, and the same for whoever asks. */
export type Turn = Readonly<Duty>;

const dutiesOf = lastFor<readonly Duty[]>();

/**
 * The turns of everybody that touch a stretch of time, each whole, after swaps and leave. Somebody who is no longer among
 * the people of the facility has none, even where a shift or a swap still names them.
 * @param from first moment of the stretch
 * @param to the moment after its last
 * @returns turns in order of their start
 * @throws RangeError when there is no such zone
 */
export function turnsOf({ site, people, shifts, exceptions }: Rota, from: Instant, to: Instant): Turn[] {
  const known = new Set(people.map(({ key }) => key));
  // No turn is longer than from one day to the same time of the next: what begins earlier is over.
  const firstDay = addDays(wallClock(site.zone, from).date, -1);
  const lastDay = wallClock(site.zone, to).date;
  const causes = [site.zone, firstDay, lastDay, JSON.stringify(exceptions)];
  const all = dutiesOf(shifts, causes, () => duties(shifts, exceptions, site.zone, firstDay, addDays(lastDay, 1)));
  return all.filter(({ person, start, end }) => known.has(person) && end > from && start < to);
}
