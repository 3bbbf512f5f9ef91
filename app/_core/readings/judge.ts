import type { SensorQuantity } from '../facility/system';
import given from './bounds.json';
import type { Quality } from './reading';
import type reasons from './reasons.json';
import words from './sentinels.json';

/** Why a reading is not good; each has its sentence in `reasons.json`. */
export type Reason = keyof typeof reasons;

/** How far a reading can be trusted, and why no further. */
export interface Judged {
  quality: Quality;
  /** Absent exactly when it is good. */
  reason?: Reason;
}

/** A value as the source wrote it. */
export interface Raw {
  value: number;
  /** The facility file's own of the quantity when absent or empty. */
  unit?: string;
}

/** Both ends are still inside: outside `bad` it cannot be, outside `suspect` it hardly is. */
interface Bounds {
  bad: number[];
  suspect: number[];
  source: string;
}

const BOUNDS: Readonly<Record<SensorQuantity, Bounds>> = given;
const GOOD: Judged = { quality: 'good' };
/** Quantities that stand at exactly zero together when their probes hang in nothing. */
const PROBES: readonly SensorQuantity[] = ['oxygen', 'oxygen-saturation', 'ph'];

/**
 * Judges one reading by itself. What a sensor says instead of a reading is known by the value and unit it wrote: 85 °C is a
 * thermometer that has not measured yet, 85 °F a hot tank.
 *
 * @param value   in the facility file's unit of the quantity
 * @param raw     as the source wrote it
 */
export function judge(quantity: SensorQuantity, value: number, raw: Raw): Judged {
  const word = words.find((one) => isWord(one, quantity, raw));
  if (word) return { quality: 'bad', reason: word.reason as Reason };
  if (quantity === 'leak' && value !== 0 && value !== 1) return { quality: 'bad', reason: 'impossible' };
  const { bad, suspect } = BOUNDS[quantity];
  if (!isWithin(value, bad)) return { quality: 'bad', reason: 'impossible' };
  return isWithin(value, suspect) ? GOOD : { quality: 'suspect', reason: 'unlikely' };
}

/** A reading beside others of the same system and instant. */
export interface Neighbour extends Judged {
  quantity: SensorQuantity;
  /** In the facility file's unit. */
  value: number;
}

/**
 * Judges readings of one system and instant beside one another: two or more of oxygen, its saturation and pH at exactly zero are
 * probes that hang in nothing, and no reading of the water. Each is left at least as doubtful as it was.
 *
 * @returns   what each is then, in the order given
 */
export function judgeTogether(readings: readonly Neighbour[]): Judged[] {
  const zeros = new Set(readings.filter(isZeroProbe).map(({ quantity }) => quantity));
  return readings.map((reading) => {
    if (zeros.size > 1 && isZeroProbe(reading) && reading.quality === 'good')
      return { quality: 'suspect', reason: 'probes-out' };
    return reading.reason === undefined ? GOOD : { quality: reading.quality, reason: reading.reason };
  });
}

function isZeroProbe({ quantity, value }: Neighbour): boolean {
  return value === 0 && PROBES.includes(quantity);
}

interface Word {
  /** Of any quantity when empty; so are the units. */
  quantities: string[];
  units: string[];
  values: number[];
}

function isWord({ quantities, units, values }: Word, quantity: SensorQuantity, raw: Raw): boolean {
  if (!values.includes(raw.value) || (quantities.length > 0 && !quantities.includes(quantity))) return false;
  // A value without a unit is in the facility file's own, which is the first of each list.
  return units.length === 0 || units.includes(raw.unit || 'Cel');
}

function isWithin(value: number, [low = -Infinity, high = Infinity]: readonly number[]): boolean {
  return value >= low && value <= high;
}
