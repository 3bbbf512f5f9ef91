// Series that follow from readings by a law of `_core/water`, and that nobody reads or enters.
import type { SeriesQuantity } from '../figures';

/** What can follow from readings. */
export const DERIVED_KINDS = [
  'oxygen-saturation',
  'unionised-ammonia',
  'salinity',
  'difference',
  'watts-beyond',
  'top-off',
] as const;
export type DerivedKind = (typeof DERIVED_KINDS)[number];

/** Part that a sensor has in a law. */
export type InputRole = 'lead' | 'temperature' | 'salinity' | 'ph' | 'other';

/** A sensor that a law reads, and how old its newest reading may be at the instant of the leading one, ms. */
export interface DerivedInput {
  role: InputRole;
  /** Key of a sensor of the same system. */
  sensor: string;
  ageMs: number;
}

/** A series that follows from others of its system. */
export interface DerivedSeries {
  /** `derived:KIND:LEAD`, and `derived:difference:ONE:OTHER`: what alarms and addresses call it. */
  key: string;
  name: string;
  kind: DerivedKind;
  quantity: SeriesQuantity;
  /** The leading one first: there is a value at each instant of its readings. */
  inputs: DerivedInput[];
  /** What the description gives where no sensor does, and what else the law takes. */
  given: DerivedGiven;
}

/** Figures of the description that a law takes. */
export interface DerivedGiven {
  /** Practical salinity the system is kept at. */
  salinity?: number;
  /** atm. */
  pressureAtm?: number;
  phScale?: 'nbs' | 'total' | 'free';
  /** °C that the reading was brought to, in place of the temperature of the water. */
  compensatedToC?: number;
  minW?: number;
  maxW?: number;
  /** L/h that a top-off moves while it runs. */
  flowLPerH?: number;
  /** m² of the reservoir whose level is read. */
  surfaceM2?: number;
}

const MARK = 'derived:';

/** Whether a key of something that is read is that of a derived series; keys of sensors have no colon. */
export function isDerivedKey(key: string): boolean {
  return key.startsWith(MARK);
}

/** The key of a derived series. @param sensors   keys of its leading sensor and, of a difference, of the other */
export function derivedKey(kind: DerivedKind, ...sensors: string[]): string {
  return MARK + [kind, ...sensors].join(':');
}

/** What a key says. @returns null for one that is none of a derived series */
export function readDerivedKey(key: string): { kind: DerivedKind; sensors: string[] } | null {
  if (!isDerivedKey(key)) return null;
  const [word, ...sensors] = key.slice(MARK.length).split(':');
  const kind = DERIVED_KINDS.find((one) => one === word);
  if (!kind || sensors.length !== (kind === 'difference' ? 2 : 1) || sensors.includes('')) return null;
  return { kind, sensors };
}
