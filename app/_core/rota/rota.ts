/**
 * What this room knows: who can act, and how soon, at each hour of the week.
 * What it leaves out: fatigue; whether somebody may do the work is asked of their competences alone.
 * Where the numbers come from: the rota, its swaps and leave, and the travel times people entered.
 */
import type { QuietHours } from '../alarms/steps';
import type { Figure } from '../facility/figure';
import type { Day } from '../facility/site';
import type { EquipmentType } from '../facility/system';
import type { Instant } from '../time/zone';

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
  /** What they may do of the work that not everybody may. */
  competences?: HeldCompetence[];
}

/** A person as reviews see them: with when their duties keep them at another site. Never written to a file. */
export interface PersonApart extends Person {
  away?: Away[];
}

/** A stretch of the usual week, s since Monday 00:00, in which somebody is on site at another site, and the way from there, s. */
export interface Away {
  fromS: number;
  lengthS: number;
  wayS: number;
}

/** Work at a site that not everybody may do: to dose, to put the ozone back, to enter the pit. */
export interface Competence {
  key: string;
  name: string;
  /** Types of equipment that only somebody with it puts right; none: it is asked for by people alone. */
  types?: EquipmentType[];
}

/** That somebody has a competence, on somebody's word, until a day. */
export interface HeldCompetence {
  /** Key of the competence. */
  competence: string;
  /** Last day on which it counts, "YYYY-MM-DD"; absent: until it is taken away. */
  until?: string;
  /** Name of whoever attested it. */
  attestedBy?: string;
}

/**
 * A stretch of duty that recurs at local wall-clock times; `to` at or before `from` is the next day. It begins on `days` of
 * each week; `everyWeeks`, `rule`, `starts`, `ends` and `except` only take days away from these, and where several are given
 * all of them count.
 */
export interface Shift {
  key: string;
  kind: 'on-site' | 'on-call';
  people: string[];
  days: Day[];
  from: string;
  to: string;
  /** Every so many weeks, counted from the one (Monday first) that `starts` lies in; absent: every week. */
  everyWeeks?: number;
  /** Rule of RFC 5545 for the days on which it begins, counted from `starts`, for example FREQ=MONTHLY;BYDAY=1SA. */
  rule?: string;
  /** First and last day on which it may begin, "YYYY-MM-DD". */
  starts?: string;
  ends?: string;
  /** Days on which it does not begin. */
  except?: FreeDay[];
}

/** A day on which a shift does not begin, "YYYY-MM-DD". */
export interface FreeDay {
  on: string;
  why?: string;
}

/** Something that makes a dated duty be another than the shifts say. All of them were approved. */
export type DutyException =
  /**
   * The turn of a shift that begins on a day is taken by one person in the place of another: the whole of it, or what of it
   * lies from one moment up to, and without, another.
   */
  | { kind: 'swap'; shift: string; date: string; gives: string; takes: string; from?: Instant; to?: Instant }
  /** Somebody is away: they have no duty from one moment up to, and without, another. */
  | { kind: 'leave'; person: string; from: Instant; to: Instant };
