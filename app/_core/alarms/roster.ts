import type { Facility } from '../facility/facility';
import { onNow } from '../rota/on-now';
import type { DutyException } from '../rota/rota';
import { type Instant, wallClock } from '../time/zone';
import { isQuiet } from './steps';
import type { Member, Roster } from './to-tell';

/**
 * Who there is at a moment, and how the site calls them.
 *
 * @param exceptions   swaps and leave: whoever took a night over is called in it, and nobody on leave is
 * @param members      everybody with access to the site
 * @throws RangeError when the site's zone is unknown
 */
export function rosterAt(
  facility: Facility,
  exceptions: readonly DutyException[],
  members: readonly Member[],
  at: Instant,
): Roster {
  const { time } = wallClock(facility.site.zone, at);
  const quiet = facility.people.filter((one) => one.quiet !== undefined && isQuiet(one.quiet, time));
  const { callSteps } = facility.site;
  return {
    on: onNow({ ...facility, exceptions }, at),
    members,
    quiet: new Set(quiet.map(({ key }) => key)),
    ...(callSteps === undefined ? {} : { steps: callSteps }),
  };
}

/** Those there are beside one of them: whoever called for help is there already. @param account of whoever called */
export function besides(roster: Roster, account: string): Roster {
  const own = new Set(roster.members.filter((member) => member.account === account).map(({ person }) => person));
  return {
    ...roster,
    on: roster.on.filter(({ person }) => !own.has(person)),
    members: roster.members.filter((member) => member.account !== account),
  };
}
