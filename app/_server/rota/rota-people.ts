import 'server-only';
import { DEFAULTS } from '#core/equipment/defaults';
import type { Facility } from '#core/facility/facility';
import type { Figure } from '#core/facility/figure';
import type { Role } from '#core/rota/rota';
import { listMembers } from '#data/accounts/members';
import { waysOf } from '#data/calls/ways';

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
  /** Browsers of theirs that take calls. */
  devices: number;
  /** What they may do of the work that not everybody may; `isOver`: it counts no more. */
  competences: { name: string; until: string | null; attestedBy: string | null; isOver: boolean }[];
}

/** The people of a site's rota: how soon each can be there, whether anything reaches them, what they may. @param today ISO date */
export async function rotaPeople(siteId: string, facility: Facility, today: string): Promise<RotaPerson[]> {
  const [all, ways] = await Promise.all([listMembers(siteId), waysOf(siteId)]);
  const members = all.filter(({ endedAt, isEnded }) => endedAt === null && !isEnded);
  const byPerson = new Map(members.map((member) => [member.person?.key, member]));
  const { answerOnSiteMin, answerOnCallMin } = facility.site;
  const onSite = minutesOf(answerOnSiteMin, DEFAULTS.answerOnSiteMin.value);
  const named = new Map((facility.site.competences ?? []).map((one) => [one.key, one.name]));
  const answer = minutesOf(answerOnCallMin, DEFAULTS.answerOnCallMin.value);
  return facility.people.map(({ key, name, role, travelMin, competences = [] }) => {
    const travel = minutesOf(travelMin, DEFAULTS.travelMin.value);
    const member = byPerson.get(key);
    return {
      ...{ key, name, role, travel, onSite },
      onCall: { value: answer.value + travel.value, isDefault: answer.isDefault || travel.isDefault },
      isOnShift: facility.shifts.some(({ people }) => people.includes(key)),
      account: member ? (member.email === null ? 'no-address' : 'mailed') : 'none',
      devices: ways.find(({ account }) => account === member?.accountId)?.devices ?? 0,
      competences: competences.map(({ competence, until = null, attestedBy = null }) => ({
        name: named.get(competence) ?? competence,
        until,
        attestedBy,
        isOver: until !== null && until < today,
      })),
    };
  });
}

function minutesOf(figure: Figure | undefined, usual: number): Minutes {
  const value = figure?.value;
  return typeof value === 'number' ? { value, isDefault: false } : { value: usual, isDefault: true };
}
