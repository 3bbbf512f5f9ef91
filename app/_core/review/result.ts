/**
 * What this room knows: how a system's fault cases are judged, and what a review says.
 * What it leaves out: faults that share nothing befalling together, and what the model does not carry, which it names (`not-modelled`).
 * Where the numbers come from: `simulate` for the water, `rota` for the people.
 */
import type { Consequence, Priority } from '../alarms/design/priority';
import type { BadEnd } from '../equipment/take';
import type { Origin } from '../facility/figure';
import type { LimitQuantity } from '../facility/stock';
import type { StateName } from '../facility/system';
import type { Column } from '../plans/credit';

/** Verdicts in the order in which the first match decides (design: not assessed … covered). */
export const VERDICTS = [
  'not-assessed',
  'dormant',
  'holds',
  'no-warning',
  'too-late',
  'some-hours',
  'covered',
] as const;
export type Verdict = (typeof VERDICTS)[number];

/** Whom or what a harm befalls, gravest first. */
export type HarmClass = 'animals' | 'floor' | 'equipment';

/** One harm reached by a fault case. Times are seconds after the fault begins. */
export interface Harm {
  class: HarmClass;
  what: LimitQuantity | 'water-on-floor' | 'pump-dry';
  direction: 'above' | 'below';
  /** Key of the tank; empty for the floor. */
  tank: string;
  /** Its name, where the harm is told to people. */
  tankName?: string;
  /** The limit in its own unit (°C, salinity, mg/L, part of volume, K, litres). */
  limit: number;
  forMin: number;
  /** Stock groups harmed; empty for floor and equipment. */
  groups: string[];
  atS: number;
}

/** How somebody comes to know, for one onset hour. */
export interface Notice {
  by: 'alarm' | 'round' | 'watchdog' | 'nobody';
  key?: string;
}

/** What the hours of the week make of one harm class. Arrays hold 168 values, Monday 00:00 first; null means never. */
export interface Outcome {
  /** The first harm of the class when the fault begins at the worst hour: the one with the least time to spare. */
  harm: Harm;
  /** Latest intervention, seconds after onset, that still avoids the harm, by onset hour. */
  lastChanceS: (number | null)[];
  /** Harm, seconds after onset, by onset hour; null where this hour leads to none. */
  harmS: (number | null)[];
  noticeS: (number | null)[];
  noticeBy: Notice[];
  /** Notice + answer + travel + repair, seconds after onset. */
  putRightS: (number | null)[];
  /** lastChance − putRight; null where no harm or nobody ever comes (then `putRightS` is null). */
  spareS: (number | null)[];
  verdict: Verdict;
}

/** One fault case judged in one column. */
export interface Judgement {
  verdict: Verdict;
  /** Gravest class first; empty when nothing is harmed. */
  outcomes: Outcome[];
  /** Safeguards and alarms that acted on the way. */
  acted: string[];
  /** Why it is not assessed, in words. */
  reason?: string;
  /** Names of the alarms and safeguards that a dormant fault puts out of action. */
  disables?: string[];
}

/** What a fault case is about; a `matter` is what no list of the description holds: the clock, the feed, the calls. */
export interface CaseThing {
  kind:
    | 'equipment'
    | 'sensor'
    | 'tank'
    | 'circuit'
    | 'rcd'
    | 'site'
    | 'state'
    | 'gateway'
    | 'system'
    | 'room'
    | 'matter';
  key: string;
  name: string;
}

/** What an alarm has to do with a fault case, as it is described, when it begins at its worst hour. */
export interface AlarmInCase {
  /** Key of the alarm. */
  alarm: string;
  /** When it is raised, s after the onset; null: never. */
  afterS: number | null;
  /** s from then to the last chance, below 0 when it comes too late; null without harm. */
  leftS: number | null;
  /** s from its call to everything being put right, at the worst hour for whoever answers it; null: never. */
  neededS: number | null;
  /** At some hour of the week nothing and nobody tells of it sooner. */
  isFirst?: true;
  /** The value up to which its limit would be early enough, by side; null: none would. Only where it measures the harm. */
  wouldDo?: { above?: number | null; below?: number | null };
}

export interface FaultCase {
  /** Stable: fault id, thing and state, for example `heater-on:heater-1:normal`. */
  id: string;
  fault: string;
  title: string;
  thing: CaseThing;
  state: StateName;
  claimed: Judgement;
  tested: Judgement;
  /** The plausible range of the inputs, on the bad side, would change the verdict. */
  unsure: boolean;
  /** A formula was used outside its published range on the way. */
  outsideValidity: boolean;
  /** A tank stood without movement, so a mixed-tank result flatters it. */
  optimistic: boolean;
  /** Keys of the tanks that did. */
  still?: string[];
  /** Oxidant came in and nothing is reckoned to use it up: what it comes to is a bound. */
  bound?: true;
  /** Remedies that would answer it, most direct first. */
  remedies: string[];
  /** What alarms have to do with it; absent where none has, and in reviews that were kept before it was told. */
  alarms?: AlarmInCase[];
}

/** Where a limit of an alarm stands, in the unit of its sensor. */
export interface LimitDesign {
  side: 'above' | 'below';
  limit: number;
  /** The farthest that a healthy system goes to this side, and in which operating state. */
  healthy: { value: number; state: StateName };
  /** The limit lies within that. */
  isWithin: boolean;
  /** The alarm is raised with nothing wrong; else only its delay keeps it from that. */
  isRaisedHealthy: boolean;
  /** The limit that would be early enough in every case in which one can be, and the case that demands it; null: none is demanded. */
  proposed: number | null;
  proposedBy: string | null;
  /** Cases in which no limit would be early enough. */
  hopeless: number;
  /** It is set beyond the proposed one. */
  isLate: boolean;
  /** The proposed one lies outside what a healthy system does. */
  hasRoom: boolean;
}

/** What the review makes of an alarm. */
export interface AlarmDesign {
  /** Its key. */
  alarm: string;
  /** Whether the model can raise it at all. */
  isCarried: boolean;
  /** Fault cases in which it is raised. */
  raisedIn: number;
  /** What follows in the case that decides how urgent it is, and which that is. */
  consequence: Consequence;
  case: string | null;
  /** s from the alarm to the last chance in that case; null: none leads to harm. */
  availableS: number | null;
  /** s from its call to everything being put right there, at the worst hour of the week; null: never. */
  neededS: number | null;
  proposed: Priority;
  /** Animals are harmed so soon after it that a person alone cannot be what saves them. */
  needsMore?: true;
  limits: LimitDesign[];
}

export type Grade = 'high' | 'medium' | 'low';

/** Findings share a remedy; each line under it is one cause. */
export interface Finding {
  id: string;
  grade: Grade;
  /** What to do, in words. */
  remedy: string;
  title: string;
  lines: FindingLine[];
}

/** What a person may read in another unit: °C, K, litres, mm or L/h. */
export interface Measure {
  kind: 'temperature' | 'difference' | 'volume' | 'length' | 'flow';
  value: number;
}

/** A figure of a finding. */
export interface LineFigure {
  name: string;
  /** Ready to read, with its unit. */
  value: string;
  /** The same, for whoever reads it in a unit of their own. */
  measure?: Measure;
}

export interface FindingLine {
  /** Fault case or rule this comes from. */
  from: { case: string } | { rule: string };
  cause: string;
  consequence: string;
  figures: LineFigure[];
  source: string;
}

/** A figure that was filled in or is missing, and what it would change. */
export interface OpenInput {
  path: string;
  name: string;
  value: number | null;
  unit: string;
  low?: number;
  high?: number;
  source: string;
  /** Absent in reviews that were kept before it was told. */
  origin?: Origin;
  /** Which end of its range is the bad one for warmth and want of oxygen, and which for cold and salt; absent as above. */
  bad?: BadEnd;
  /** Fault cases whose verdict its range would change. */
  changes: string[];
}

export interface SystemReview {
  system: string;
  name: string;
  /** Gravest verdict over all fault cases that harm animals, per column. */
  worst: Record<Column, { verdict: Verdict; case: string | null; spareS: number | null }>;
  cases: FaultCase[];
  findings: Finding[];
  inputs: OpenInput[];
  /** The one figure whose range, if narrowed, would settle most verdicts. */
  askNext: string | null;
  /** Unsure cases that were asked figure by figure what would change them; absent where nobody asked. */
  askedOf?: string[];
  /** Named hazards that the model does not carry. */
  notModelled: string[];
  /** What it makes of each alarm; absent in reviews that were kept before it was told. */
  alarms?: AlarmDesign[];
}

export interface FacilityReview {
  site: string;
  name: string;
  /** The day the tests are judged on, ISO date in the site's zone. */
  on: string;
  systems: SystemReview[];
  /** Findings about the site as a whole (rota, power, gateway). */
  findings: Finding[];
}
