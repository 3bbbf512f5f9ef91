/**
 * What this room knows: how a system comes out of the answers to a few questions, well enough for a review to begin.
 * What it leaves out: whatever was not asked. It is not claimed to be there, and figures are left to their defaults.
 * Where the numbers come from: the answers; what is made of two of them says so.
 */
import type { AnsweredBy, CarriedOutBy } from '../facility/site';
import type { SystemKind, TankRole } from '../facility/system';

/** Roles of a tank that animals are kept in. */
export const KEEPING_ROLES = ['display', 'holding', 'quarantine', 'nursery'] as const satisfies readonly TankRole[];

/** The answers to the questions a system is begun with. */
export interface StartAnswers {
  /** What is kept, and where. */
  what: {
    name: string;
    kind: SystemKind;
    room: string;
    /** Practical salinity, 0 for fresh water. */
    salinity: number;
  };
  /** Tanks, all alike. */
  tanks: {
    role: (typeof KEEPING_ROLES)[number];
    count: number;
    /** Water in each, litres. */
    volumeL: number;
    depthMm: number;
    cover: 'open' | 'lidded';
  };
  /** Absent: each tank stands by itself. */
  sump?: {
    volumeL: number;
    depthMm: number;
    pumps: number;
    /** Moved by each pump. */
    flowLPerH: number;
  };
  /** Absent: the water is as warm as its room makes it. */
  heat?: HeatAnswer;
  /** What moves and airs the water besides the return. */
  movement: {
    circulation?: { eachTank: number; flowLPerH: number };
    air?: { stonesEachTank: number };
    skimmer: 'yes' | 'no';
  };
  topOff?: TopOffAnswer;
  animals: { group: string; count: number; eachG: number }[];
  /** What feeds it, and who is called. */
  power: { heat?: string; pumps?: string; air?: string };
  watch?: WatchAnswer;
}

export interface HeatAnswer {
  keptAtC: number;
  /** `hard-wired`: each has a thermostat and a probe of its own. */
  by: CarriedOutBy;
  heaters?: { count: number; eachW: number; cutOut?: { aboveC: number; reset: 'manual' | 'automatic' } };
  chiller?: { coolingW: number };
}

export type TopOffAnswer = { by: CarriedOutBy; runLimitMin?: number } & (
  | { from: 'mains' }
  | { from: 'reservoir'; holdsL: number }
);

export interface WatchAnswer {
  aboveC?: number;
  belowC?: number;
  /** By the probe that regulates, or by one of its own. */
  probe: 'own' | 'regulating';
  gateway?: string;
  answeredBy: AnsweredBy;
}
