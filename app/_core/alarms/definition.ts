/**
 * What this room knows: what an alarm is defined to watch and who answers it.
 * What it leaves out: the life of a raised alarm, which comes with readings.
 * Where the numbers come from: the people who set the limits.
 */
import type { AnsweredBy } from '../facility/site';

export type AlarmSource =
  | { kind: 'sensor'; sensor: string; above?: number; below?: number }
  /** The equipment draws outside its watts range, or draws while commanded off. */
  | { kind: 'watts'; equipment: string }
  /** Nothing has come from this gateway for `delayS`. */
  | { kind: 'silent'; gateway: string };

export interface AlarmDefinition {
  key: string;
  name: string;
  on: AlarmSource;
  /** Seconds the condition must hold without a break. */
  delayS: number;
  /** How far back inside the limit it must come to clear, in the sensor's unit. */
  deadBand: number;
  answeredBy: AnsweredBy;
  /** Safeguard whose tests prove the way from this alarm to a person. */
  safeguard?: string;
}
