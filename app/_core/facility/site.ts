import type { CallStep } from '../alarms/steps';
import type { Competence } from '../rota/rota';
import type { ByHour, Figure } from './figure';

/** When a site opens and closes on some days of the week, on its own clocks. */
export interface OpeningHours {
  days: Day[];
  opens: string;
  closes: string;
}

/**
 * When no loud test is to be run, of a generator or a blower: neighbours, opening hours, the animals' nights. Local wall-clock
 * times; `to` at or before `from` is the next day.
 */
export interface QuietTime {
  /** Days on which it begins. */
  days: Day[];
  from: string;
  to: string;
  why?: string;
}

/** Days of the week, Monday first (ISO 8601). */
export const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Day = (typeof DAYS)[number];

/** Who or what carries out a line of a plan. Only the first two are credited as automatic. */
export type CarriedOutBy = 'hard-wired' | 'controller' | 'person';

/** One place under one management, with one time zone and one rota. */
export interface Site {
  key: string;
  name: string;
  /** IANA zone, for example Europe/London. */
  zone: string;
  /** Height above sea level, metres; sets the air pressure. */
  altitudeM?: Figure;
  /** Minutes from being called to having understood, for someone on the premises. */
  answerOnSiteMin?: Figure;
  /** Minutes from being called to leaving home, for someone on call. */
  answerOnCallMin?: Figure;
  /** The same two by night, 22:00 to 07:00; left out: as by day. */
  answerOnSiteNightMin?: Figure;
  answerOnCallNightMin?: Figure;
  generator?: Generator;
  /** Water of the mains, where make-up or a supply comes from it. */
  mains?: Mains;
  /** What people can do when the utility fails and stays away. Absent: nothing is described. */
  powerCut?: PowerCut;
  /** A watch kept outside the site that calls when Holdfast or a gateway falls silent. */
  watchdog?: Watchdog;
  /** Months for which each single reading is kept; absent: for ever. What they are rolled up to stays in any case. */
  keepReadingsMonths?: number;
  /** In which order people are called for an alarm; `USUAL_STEPS` when left out. */
  callSteps?: CallStep[];
  /** Minutes from the last step of calls to the same once more; `REPEAT_CALLS_MIN` when left out. */
  repeatCallsMin?: number;
  /** When it opens and closes, where it does. */
  openingHours?: OpeningHours[];
  /** Days on which it is closed out of turn, ISO dates. */
  holidays?: { on: string; why?: string }[];
  /** Ways to other sites whose people may be called here as well. */
  waysTo?: { site: string; min: number }[];
  /** When no loud test is to be run. */
  quietHours?: QuietTime[];
  /** Days from one test call of a person to the next; `TEST_CALL_EACH_DAYS` when left out. */
  testCallEachDays?: number;
  /** Work that not everybody here may do. */
  competences?: Competence[];
}

/** What comes out of the tap. */
export interface Mains {
  /** Free and combined chlorine as it arrives, mg/L as Cl2. */
  oxidantMgL?: Figure;
  /** °C; absent: the room's. */
  temperatureC?: Figure;
}

/** A stand-by set that feeds the circuits backed by `generator`. */
export interface Generator {
  startsAfterS?: Figure;
  /** Hours it runs on the fuel kept for it. */
  fuelH?: Figure;
  ratedW?: Figure;
  /** Safeguard (site level) whose tests prove that it starts under load. */
  safeguard: string;
}

/** The people's own means against a power cut: what, and minutes of work once there. */
export interface PowerCut {
  means: string;
  repairMin: Figure;
}

export interface Watchdog {
  afterMin: number;
  answeredBy: AnsweredBy;
  safeguard?: string;
}

/** The rota (whoever is on), named people only, or nobody. */
export type AnsweredBy = 'rota' | 'nobody' | string[];

/** Air around the systems of one room. */
export interface Room {
  key: string;
  name: string;
  temperatureC: ByHour;
  humidityPct: ByHour;
}

/** What keeps a circuit alive after the utility fails. */
export type Backing = 'ups' | 'generator';

/** One electrical circuit with its breaker; circuits of the same `rcd` group lose power together. */
export interface Circuit {
  key: string;
  name: string;
  breakerA?: Figure;
  volts?: Figure;
  rcd?: string;
  backedBy: Backing[];
  upsMin?: Figure;
  /** Safeguard (site level) that proves the battery. */
  upsSafeguard?: string;
}

/** A part of the way an alarm travels; it needs power like everything else. */
export interface Monitor {
  key: string;
  name: string;
  kind: 'gateway' | 'host' | 'router' | 'mail';
  circuit?: string;
}
