import type { Role } from '#core/rota/rota';

/** A duty that is left open when somebody goes. */
export type DutyView =
  | { kind: 'on-site' | 'on-call'; shift: string; days: string[]; from: string; to: string }
  | { kind: 'swap-taken'; shift: string; date: string }
  | { kind: 'safeguard-off'; safeguard: string; until: string }
  | { kind: 'plan-draft' | 'plan-submitted'; equipment: string; system: string; version: number };

/** Somebody with a role at the site, or who had one. */
export interface MemberView {
  account: string;
  role: Role;
  name: string | null;
  email: string | null;
  since: string;
  endedAt: string | null;
  person: string | null;
  duties: DutyView[];
}

interface SiteView {
  site: { key: string; name: string; zone: string };
  rota: { key: string; name: string | null }[];
  isMailed: boolean;
}

/** Who may do what at a site. */
export interface PeopleView extends SiteView {
  members: MemberView[];
  left: MemberView[];
  everywhere: { account: string; name: string | null; role: Role }[];
}

/** One of them. */
export interface MemberPageView extends SiteView {
  member: MemberView;
  isYou: boolean;
}

/** How a link comes to whom it is for. */
export type LinkView = { way: 'mail' } | { way: 'shown'; address: string };

/** What each role adds to those before it. */
export const ROLE_MEANINGS: Record<Role, string> = {
  viewer: 'sees the site and its reviews',
  aquarist: 'also reads the record and records tests of safeguards',
  lead: 'also describes the site, writes plans and puts those of others in force, takes safeguards off',
  manager: 'also imports facility files and has every seal worked out',
  admin: 'also says who may do what',
};

/** A role as it is read. */
export const ROLE_NAMES: Record<Role, string> = {
  viewer: 'viewer',
  aquarist: 'aquarist',
  lead: 'lead',
  manager: 'manager',
  admin: 'administrator',
};

/** What somebody is called; an erased one has no name. */
export function calledSo({ name, email }: Pick<MemberView, 'name' | 'email'>): string {
  return name ?? email ?? 'name erased';
}

/** Days of the week in words. */
const DAYS: Readonly<Record<string, string>> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

/** A duty in words. */
export function dutySaid(duty: DutyView): string {
  switch (duty.kind) {
    case 'on-site':
    case 'on-call':
      return `${duty.kind === 'on-call' ? 'on call' : 'on site'} in the shift ${duty.shift}: ${duty.days.map((day) => DAYS[day] ?? day).join(', ')}, ${duty.from} to ${duty.to}`;
    case 'swap-taken':
      return `took over the turn of the shift ${duty.shift} that begins on ${duty.date}`;
    case 'safeguard-off':
      return `took ${duty.safeguard} out of service until ${duty.until}`;
    case 'plan-draft':
    case 'plan-submitted':
      return `${duty.kind === 'plan-draft' ? 'drafted' : 'submitted'} version ${duty.version} of the plan of ${duty.equipment}, ${duty.system}`;
  }
}
