import type { EquipmentType, PhScale, SensorQuantity } from '../facility/system';
import type { QuietSpan } from '../plans/quiet-at';
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
  /** Whether somebody else has to sign it as well. */
  secondSignature?: true;
}

/** What is usual, both ends counting; an end that is left out is open. */
export interface Range {
  from?: number;
  to?: number;
}

/** Limits of alarms that a rising and a falling value meet first, in the sensor's unit. */
export interface NearestLimits {
  above?: number;
  below?: number;
}

/** A reading that a person takes. `alarm` is the nearest limit of its alarms, `usual` what it should be; in the sensor's unit. */
export interface NumberCheck extends Line {
  kind: 'number';
  quantity: SensorQuantity;
  alarm?: NearestLimits;
  usual?: Range;
}

/** A number that no sensor of the description reads, in a unit that is written beside it and never converted. */
export interface FigureCheck extends Line {
  kind: 'figure';
  unit: string;
  usual?: Range;
}

/** Something that is as usual, or is not. */
export interface YesNoCheck extends Line {
  kind: 'yes-no';
}

/** One of a few words. */
export interface ChoiceCheck extends Line {
  kind: 'choice';
  options: ChoiceOption[];
}

export interface ChoiceOption {
  key: string;
  name: string;
  /** Whether nothing follows from it. */
  usual: boolean;
}

/** A sentence. */
export interface TextCheck extends Line {
  kind: 'text';
}

/** One photo or a few. */
export interface PhotoCheck extends Line {
  kind: 'photo';
}

/** Animals counted, or all seen. */
export interface HeadCheck extends Line {
  kind: 'head-count';
  /** How many are described. */
  expected: number;
}

/** What was used since somebody last looked, litres. `perDay` is what is usual, L/d. */
export interface UsedCheck extends Line {
  kind: 'used';
  perDay?: Range;
}

/** Doses given since somebody last looked, each of `dose` where that is said. `perDay` is what is usual, doses a day. */
export interface DosesCheck extends Line {
  kind: 'doses';
  dose?: string;
  perDay?: Range;
}

/** What a water test may ask. */
export const WATER_QUANTITIES = [
  'temperature',
  'ph',
  'salinity',
  'oxygen',
  'ammonia',
  'nitrite',
  'nitrate',
  'phosphate',
  'alkalinity',
] as const satisfies readonly SensorQuantity[];
export type WaterQuantity = (typeof WATER_QUANTITIES)[number];

/** One figure of a water test. It is a reading of `sensor`, where the description has one for it; key within the system. */
export interface WaterAsked {
  quantity: WaterQuantity;
  sensor: string | null;
  alarm?: NearestLimits;
  usual?: Range;
}

/** What is known of the water besides what is typed: what the figures imply hangs on it. */
export interface WaterGiven {
  phScale: PhScale;
  /** Pressure of the air, atm. */
  pressureAtm: number;
  /** Practical salinity that the system is kept at; left out where that is not known. */
  salinity?: number;
  /** °C that it is kept at; left out where that is not known. */
  temperature?: number;
}

/** Figures that are taken together, because together they imply more: see `implied.ts`. */
export interface WaterTestCheck extends Line {
  kind: 'water-test';
  asks: WaterAsked[];
  given: WaterGiven;
}

/** An instrument held against what is known: before and after it was set, point by point. */
export interface CalibrationCheck extends Line {
  kind: 'calibration';
  quantity: SensorQuantity;
  /** How far it may be out before it was set, in the facility file's unit; left out where nobody said. */
  within?: number;
  /** ISO date until which its last calibration counts; left out where nobody said that it runs out. */
  due?: string;
  /** Whether a slope is asked for (%), as electrodes for pH show. */
  slope?: true;
}

/** A safeguard whose test is due. */
export interface TestCheck extends Line {
  kind: 'test';
  safeguard: SafeguardKind;
  everyDays: number;
  /** Its latest test, whose steps are offered again; null when there is none. */
  last: SafeguardTest | null;
  /** When its noise is not wanted, on the days about the round; left out where it may be run at any hour. */
  quiet?: QuietSpan[];
}

/** One line of a sheet. */
export type Check =
  | NumberCheck
  | FigureCheck
  | YesNoCheck
  | ChoiceCheck
  | TextCheck
  | PhotoCheck
  | HeadCheck
  | UsedCheck
  | DosesCheck
  | WaterTestCheck
  | TestCheck
  | CalibrationCheck;
