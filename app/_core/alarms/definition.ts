/**
 * What this room knows: what an alarm is defined to watch and who answers it.
 * What it leaves out: what is carried out when an alarm is raised. Holdfast switches nothing.
 * Where the numbers come from: the people who set the limits.
 */
import type { AnsweredBy } from '../facility/site';

export type AlarmSource =
  | { kind: 'sensor'; sensor: string; above?: number; below?: number }
  /** The equipment draws outside its watts range, or draws while commanded off: from readings only the first can be told. */
  | { kind: 'watts'; equipment: string }
  /** Nothing has come from this gateway for `delayS`. */
  | { kind: 'silent'; gateway: string }
  /** Nothing usable has come from this sensor: no reading at all, or only bad ones, for `delayS`. */
  | { kind: 'silent-sensor'; sensor: string };

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
  answeredBy: AnsweredBy;
  /** Minutes until the second step of calls, while nobody acknowledges; as the site has its steps when left out. */
  escalateAfterMin?: number;
  /** Safeguard whose tests prove the way from this alarm to a person. */
  safeguard?: string;
}
