/** The third of four questions: should anyone be told, and who? Step after step, while nobody acknowledges. */
import type { AnsweredBy } from '../facility/site';
import { ROLES, type Role } from '../rota/rota';
import { type CallStep, type StepWhom, USUAL_STEPS } from './steps';

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

/** Who is told at a step. */
export interface Telling {
  /** Counted from 1; beyond the site's last step it is that one repeated. */
  step: number;
  whom: ToTell[];
}

/** Who there is at a moment, and how the site calls them. */
export interface Roster {
  on: readonly OnNow[];
  members: readonly Member[];
  /** Keys of people who are in their quiet hours. */
  quiet?: ReadonlySet<string>;
  steps?: readonly CallStep[];
}

/**
 * Who is told when an alarm is raised: whoever is on, or the people named. Where nobody is on, or none of them has an account
 * by which Holdfast could reach them, everyone of the last step is told at once. Where people are on and only a later step
 * calls them, that one is taken at once. An alarm that is to be answered by nobody tells nobody, now or later.
 */
export function tellFirst(answeredBy: AnsweredBy, roster: Roster): Telling {
  const { on, members } = roster;
  if (answeredBy === 'nobody') return { step: 1, whom: [] };
  if (answeredBy !== 'rota') {
    const whom = membersFor(answeredBy.map(named), members);
    if (whom.length > 0) return { step: 1, whom };
    return tellLast(roster, answeredBy.length === 0 ? 'nobody-on' : 'no-account');
  }
  const reachable = membersFor(on.map(whyOn), members);
  if (reachable.length === 0) return tellLast(roster, on.length === 0 ? 'nobody-on' : 'no-account');
  return tellFrom(1, roster);
}

/**
 * Who is told next, while nobody acknowledges: the next step that finds anybody. A step that finds nobody, or nobody awake, is
 * passed over at once, and the last one passes over nobody. After the last step it is that one again.
 *
 * @param step   the one that was told, counted from 1
 */
export function tellNext(step: number, roster: Roster): Telling {
  const telling = tellFrom(step + 1, roster);
  return { ...telling, step: Math.max(telling.step, step + 1) };
}

function tellFrom(first: number, roster: Roster): Telling {
  const { steps = USUAL_STEPS } = roster;
  for (let step = first; step < steps.length; step++) {
    const whom = awake(whomOf(steps[step - 1]?.whom ?? 'everyone', roster), roster);
    if (whom.length > 0) return { step, whom };
  }
  return tellLast(roster, 'lead');
}

/** The last step, which calls everyone it has and looks at nobody's quiet hours. */
function tellLast(roster: Roster, why: ToTell['why']): Telling {
  const { members, steps = USUAL_STEPS } = roster;
  const last = steps.at(-1)?.whom ?? 'everyone';
  const found = whomOf(last, roster).map((one) => (why === 'lead' ? one : { ...one, why }));
  const whom = found.length > 0 ? found : leadsOf(members, 'lead', why);
  return { step: Math.max(1, steps.length), whom };
}

function whomOf(whom: StepWhom, { on, members }: Roster): ToTell[] {
  switch (whom) {
    case 'on':
      return membersFor(on.map(whyOn), members);
    case 'on-site':
    case 'on-call':
      return membersFor(on.filter(({ kind }) => kind === whom).map(whyOn), members);
    case 'lead':
      return ownOf(members, (role) => role === 'lead');
    case 'manager':
      return ownOf(members, (role) => rank(role) >= rank('manager'));
    case 'everyone':
      return onceEach([...membersFor(on.map(whyOn), members), ...leadsOf(members, 'lead', 'lead')]);
  }
}

/**
 * The rule by which people are passed over: their quiet hours say so, and they are not on. Whoever is on is told at any hour;
 * who has no person of the rota has no quiet hours.
 */
function awake(whom: readonly ToTell[], { members, quiet = new Set(), on }: Roster): ToTell[] {
  return whom.filter(({ account }) => {
    const person = members.find((member) => member.account === account)?.person ?? null;
    return person === null || !quiet.has(person) || on.some((one) => one.person === person);
  });
}

function membersFor(wanted: readonly { person: string; why: ToTell['why'] }[], members: readonly Member[]): ToTell[] {
  return onceEach(
    wanted.flatMap(({ person, why }) =>
      members.filter((member) => member.person === person).map(({ account }): ToTell => ({ account, why })),
    ),
  );
}

/** Members of the site with a role. */
function ownOf(members: readonly Member[], is: (role: Role) => boolean): ToTell[] {
  return members.filter(({ role, isElsewhere }) => isElsewhere !== true && is(role)).map(asLead);
}

/** Whoever has at least a role at the site; where there is none, whoever has it at every site. */
function leadsOf(members: readonly Member[], least: Role, why: ToTell['why']): ToTell[] {
  const leads = members.filter(({ role }) => rank(role) >= rank(least));
  const own = leads.filter(({ isElsewhere }) => isElsewhere !== true);
  return onceEach((own.length > 0 ? own : leads).map(({ account }) => ({ account, why })));
}

function rank(role: Role): number {
  return ROLES.indexOf(role);
}

function asLead({ account }: Member): ToTell {
  return { account, why: 'lead' };
}

function named(person: string): { person: string; why: ToTell['why'] } {
  return { person, why: 'named' };
}

function whyOn({ person, kind }: OnNow): { person: string; why: ToTell['why'] } {
  return { person, why: kind };
}

function onceEach(whom: readonly ToTell[]): ToTell[] {
  return whom.filter(({ account }, at) => whom.findIndex((one) => one.account === account) === at);
}
