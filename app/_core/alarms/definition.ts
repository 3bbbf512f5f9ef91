/**
 * What this room knows: what an alarm is defined to watch, how grave it is, and who answers it with what.
 * What it leaves out: what is carried out when an alarm is raised. Holdfast switches nothing.
 * Where the numbers come from: the people who set the limits.
 */
import type { AnsweredBy } from '../facility/site';
import type { StateName } from '../facility/system';
import type { Priority } from './design/priority';

/** An operating state other than the base state. */
type OtherState = Exclude<StateName, 'normal'>;

/** Keys that begin so name a series that is worked out of others as they arrive; it is watched as a sensor is. */
export const DERIVED = 'derived:';

export type AlarmSource =
  /** A sensor reads beyond a limit. Of a level or of a leak it is the same, by what the sensor measures. */
  | { kind: 'sensor'; sensor: string; above?: number; below?: number }
  /** A sensor rises or falls by more than so much an hour, over the last `overMin` minutes. Both rates are above 0. */
  | { kind: 'rate'; sensor: string; risesPerHour?: number; fallsPerHour?: number; overMin: number }
  /** Two sensors of the same quantity that should agree are further apart than `by`. */
  | { kind: 'deviation'; sensor: string; other: string; by: number }
  /** A sensor goes on reporting, and for `delayS` what it reports has not moved by more than `within`. */
  | { kind: 'frozen'; sensor: string; within: number }
  /** The equipment draws outside its watts range, draws while it is meant to be off, or draws nothing while meant to run. */
  | { kind: 'watts'; equipment: string }
  /**
   * The equipment runs longer at a stretch, or starts more often in an hour, than it should: by its meter, or by a flow
   * sensor named here.
   */
  | { kind: 'run-limit'; equipment: string; flow?: string; longerThanMin?: number; startsPerHour?: number }
  /** An operating state lasts longer than `afterMin`; than it is meant to when that is left out. */
  | { kind: 'state-outstayed'; state: OtherState; afterMin?: number }
  /** Nothing has come from this gateway for `delayS`. */
  | { kind: 'silent'; gateway: string }
  /** Nothing usable has come from this sensor: no reading at all, or only bad ones, for `delayS`. */
  | { kind: 'silent-sensor'; sensor: string };

/**
 * Somebody saw it and called for help. No reading holds it: it is over once a person says that it is right again. No
 * description has it, for it is of the one time that it was called.
 */
export interface ByHand {
  kind: 'by-hand';
  /** What was seen, beside the name of the alarm. */
  saw?: string | undefined;
  /** Where, in words: the place of a round and the line that was looked at. */
  where?: string | undefined;
  /** Account of whoever called. */
  by: string;
  /** Id of the round it was called from. */
  round?: string | undefined;
}

/** What raised an alarm: what its definition watches, or a person. */
export type RaisedBy = AlarmSource | ByHand;

/** Somebody's own choice of a priority, which stands above what the review proposes. */
export interface OwnPriority {
  level: Priority;
  /** Why it is not what was proposed. */
  why: string;
}

export interface AlarmDefinition {
  key: string;
  name: string;
  on: AlarmSource;
  /** Seconds the condition must hold without a break. */
  delayS: number;
  /** How far back inside the limit it must come to clear, in the sensor's unit. */
  deadBand: number;
  /** Seconds it must have come back inside the limit without a break before it clears; 0 when left out. */
  offDelayS?: number;
  /** Chosen by somebody; the review's proposal when left out. */
  priority?: OwnPriority;
  /** It stays until somebody resets it, also when what it watches is back; false when left out. */
  latched?: boolean;
  /** Operating states in which it is not called, since what it watches is meant to be so then. */
  suppressedIn?: OtherState[];
  /** What brings it about. */
  cause?: string;
  /** What follows when nobody does anything. */
  consequence?: string;
  /** What whoever answers it does, in order. */
  whatToDo?: string;
  answeredBy: AnsweredBy;
  /** Minutes until the second step of calls, while nobody acknowledges; as the site has its steps when left out. */
  escalateAfterMin?: number;
  /** Safeguard whose tests prove the way from this alarm to a person. */
  safeguard?: string;
}

/** Sensors of its system, by key, that an alarm is held to by its definition; those of equipment are found by their meters. */
export function sensorsNamed(on: AlarmSource): string[] {
  switch (on.kind) {
    case 'sensor':
    case 'rate':
    case 'frozen':
    case 'silent-sensor':
      return [on.sensor];
    case 'deviation':
      return [on.sensor, on.other];
    case 'run-limit':
      return on.flow === undefined ? [] : [on.flow];
    case 'watts':
    case 'state-outstayed':
    case 'silent':
      return [];
  }
}

/** Whether a key names a series that is worked out of others. */
export function isDerived(key: string): boolean {
  return key.startsWith(DERIVED);
}
