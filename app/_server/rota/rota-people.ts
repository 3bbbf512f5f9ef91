import 'server-only';
import { DEFAULTS } from '#core/equipment/defaults';
import type { Facility } from '#core/facility/facility';
import type { Figure } from '#core/facility/figure';
import type { Role } from '#core/rota/rota';
import { listMembers } from '#data/accounts/members';

/** How long something takes, min, and whether that is a default that nobody entered. */
export interface Minutes {
  value: number;
  isDefault: boolean;
}

/** Somebody of a rota. */
export interface RotaPerson {
  key: string;
  name: string;
  role: Role;
  travel: Minutes;
  /** From being called to standing there: on site, and on call from home. */
  onSite: Minutes;
  onCall: Minutes;
  /** Whether they stand in any shift. */
  isOnShift: boolean;
  /** Whether an account with access to the site is theirs, and whether it has an address that mail goes to. */
  account: 'none' | 'no-address' | 'mailed';
}

/** The people of a site's rota: how soon each can be there, and whether anything reaches them. */
export async function rotaPeople(siteId: string, facility: Facility): Promise<RotaPerson[]> {
  const members = (await listMembers(siteId)).filter(({ endedAt, isEnded }) => endedAt === null && !isEnded);
  const byPerson = new Map(members.map((member) => [member.person?.key, member]));
  const { answerOnSiteMin, answerOnCallMin } = facility.site;
  const onSite = minutesOf(answerOnSiteMin, DEFAULTS.answerOnSiteMin.value);
  const answer = minutesOf(answerOnCallMin, DEFAULTS.answerOnCallMin.value);
  return facility.people.map(({ key, name, role, travelMin }) => {
    const travel = minutesOf(travelMin, DEFAULTS.travelMin.value);
    const member = byPerson.get(key);
    return {
      ...{ key, name, role, travel, onSite },
      onCall: { value: answer.value + travel.value, isDefault: answer.isDefault || travel.isDefault },
      isOnShift: facility.shifts.some(({ people }) => people.includes(key)),
      account: member ? (member.email === null ? 'no-address' : 'mailed') : 'none',
    };
  });
}

function minutesOf(figure: Figure | undefined, usual: number): Minutes {
  const value = figure?.value;
  return typeof value === 'number' ? { value, isDefault: false } : { value: usual, isDefault: true };
}
