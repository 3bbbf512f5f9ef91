import type { EquipmentType, SensorQuantity } from '../facility/system';
import type { SafeguardKind, SafeguardTest } from '../plans/safeguard';

/** The thing that a line of a sheet stands for. */
export interface About {
  noun: 'site' | 'system' | 'tank' | 'equipment' | 'sensor' | 'stock' | 'safeguard';
  /** Key of its system; null for what belongs to the site itself. */
  system: string | null;
  key: string;
  type?: EquipmentType;
}

interface Line {
  /** The same on every sheet for as long as the thing is there. */
  key: string;
  about: About;
  /** What is looked at. */
  what: string;
  /** Why it matters, in half a sentence. */
  why: string;
}

/** A reading that a person takes. `alarm` is the nearest limit of its alarms, in the sensor's unit. */
export interface NumberCheck extends Line {
  kind: 'number';
  quantity: SensorQuantity;
  alarm?: { above?: number; below?: number };
}

/** Something that is as usual, or is not. */
export interface YesNoCheck extends Line {
  kind: 'yes-no';
}

/** Animals counted, or all seen. */
export interface HeadCheck extends Line {
  kind: 'head-count';
  /** How many are described. */
  expected: number;
}

/** What was used since somebody last looked, litres. */
export interface UsedCheck extends Line {
  kind: 'used';
}

/** A safeguard whose test is due. */
export interface TestCheck extends Line {
  kind: 'test';
  safeguard: SafeguardKind;
  everyDays: number;
  /** Its latest test, whose steps are offered again; null when there is none. */
  last: SafeguardTest | null;
}

/** One line of a sheet. */
export type Check = NumberCheck | YesNoCheck | HeadCheck | UsedCheck | TestCheck;
