/** The third of four questions: should anyone be told, and who? In two steps, the second when nobody acknowledged. */
import type { AnsweredBy } from '../facility/site';
import { ROLES, type Role } from '../rota/rota';

/** Somebody with access to the site. */
export interface Member {
  account: string;
  role: Role;
  /** Key of the person of the rota they are; null: none. */
  person: string | null;
  /** Whether they have their role at every site, and are no member of this one. */
  isElsewhere?: boolean;
}

/** Somebody who is on now. */
export interface OnNow {
  person: string;
  kind: 'on-site' | 'on-call';
}

/** Somebody to be told, and why they. */
export interface ToTell {
  account: string;
  why: 'on-site' | 'on-call' | 'named' | 'lead' | 'nobody-on' | 'no-account';
}

/** Who is told at a step, and when the next one is due. */
export interface Telling {
  step: 1 | 2;
  whom: ToTell[];
  /** Whether there is another step, should nobody acknowledge. */
  hasNext: boolean;
}

/**
 * Who is told when an alarm is raised: whoever is on, or the people named. Where nobody is on, or none of them has an account
 * by which Holdfast could reach them, leads and managers are told at once. An alarm that is to be answered by nobody tells
 * nobody, now or later.
 */
export function tellFirst(answeredBy: AnsweredBy, on: readonly OnNow[], members: readonly Member[]): Telling {
  if (answeredBy === 'nobody') return { step: 1, whom: [], hasNext: false };
  const wanted = answeredBy === 'rota' ? on.map(({ person, kind }) => ({ person, why: kind })) : answeredBy.map(named);
  const whom = wanted.flatMap(({ person, why }) =>
    members.filter((member) => member.person === person).map(({ account }): ToTell => ({ account, why })),
  );
  if (whom.length > 0) return { step: 1, whom: onceEach(whom), hasNext: true };
  return tellLeads(members, wanted.length === 0 ? 'nobody-on' : 'no-account');
}

/**
 * Whom the second step tells: whoever is a lead or above at the site; where there is none, whoever is that at every site.
 *
 * @param why   why they are told; `lead` when it is their turn
 */
export function tellLeads(members: readonly Member[], why: ToTell['why'] = 'lead'): Telling {
  const leads = members.filter(({ role }) => ROLES.indexOf(role) >= ROLES.indexOf('lead'));
  const own = leads.filter(({ isElsewhere }) => isElsewhere !== true);
  const whom = (own.length > 0 ? own : leads).map(({ account }) => ({ account, why }));
  return { step: 2, whom: onceEach(whom), hasNext: false };
}

function named(person: string): { person: string; why: ToTell['why'] } {
  return { person, why: 'named' };
}

function onceEach(whom: readonly ToTell[]): ToTell[] {
  return whom.filter(({ account }, at) => whom.findIndex((one) => one.account === account) === at);
}
