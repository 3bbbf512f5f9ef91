/**
 * What this room knows: who can act, and how soon, at each hour of the week.
 * What it leaves out: skill and fatigue; a person on duty is taken as able to do the repair.
 * Where the numbers come from: the rota and the travel times people entered.
 */
import type { QuietHours } from '../alarms/steps';
import type { Figure } from '../facility/figure';
import type { Day } from '../facility/site';

export const ROLES = ['viewer', 'aquarist', 'lead', 'manager', 'admin'] as const;
export type Role = (typeof ROLES)[number];

export interface Person {
  key: string;
  name: string;
  role: Role;
  /** Minutes from home to the site. */
  travelMin?: Figure;
  /** When they are not to be called while others can be: see `alarms/to-tell` for the rule. */
  quiet?: QuietHours;
}

/** A stretch of duty that recurs every week at local wall-clock times; `to` at or before `from` is the next day. */
export interface Shift {
  key: string;
  kind: 'on-site' | 'on-call';
  people: string[];
  days: Day[];
  from: string;
  to: string;
}
