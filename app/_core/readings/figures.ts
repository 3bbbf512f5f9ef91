import type { SensorQuantity } from '../facility/system';
import { fromCubicMetresPerSecond, toCubicMetresPerSecond } from '../units/flow';
import { fromMetres, toMetres } from '../units/length';
import type { Custom } from '../units/shown';
import given from './figures.json';

/** What a series can be of: what sensors read, and what follows from readings alone. */
export type SeriesQuantity = SensorQuantity | 'unionised-ammonia' | 'temperature-difference' | 'top-off';

interface Look {
  symbol: string;
  decimals: number;
  us?: { symbol: string; decimals: number };
}

const LOOKS: Readonly<Record<SeriesQuantity, Look>> = given;
/** Space that keeps a number and its unit on one line. */
const NO_BREAK = '\u00a0';
/** L/h in a cubic metre a second. */
const PER_HOUR = 3.6e6;
const MM = 1000;

function lookOf(quantity: SeriesQuantity, custom: Custom): { symbol: string; decimals: number } {
  const look = LOOKS[quantity];
  return (custom === 'us' ? look.us : undefined) ?? look;
}

/** How the unit of a reading is written for a person of this custom; empty where there is none. */
export function readingSymbol(quantity: SeriesQuantity, custom: Custom): string {
  return lookOf(quantity, custom).symbol;
}

/**
 * A reading as a person of this custom reads it.
 * @param value in the facility file's unit of the quantity; finite
 * @returns in the person's unit
 */
export function toCustom(quantity: SeriesQuantity, custom: Custom, value: number): number {
  if (custom !== 'us') return value;
  if (quantity === 'temperature') return (value * 9) / 5 + 32;
  if (quantity === 'temperature-difference') return (value * 9) / 5;
  if (quantity === 'level') return fromMetres(value / MM, 'in');
  if (quantity === 'top-off') return fromCubicMetresPerSecond(value / PER_HOUR, 'galUS/h');
  return quantity === 'flow' ? fromCubicMetresPerSecond(value / PER_HOUR, 'galUS/h') : value;
}

/**
 * A reading that a person of this custom wrote, in the facility file's unit of the quantity. Whether it can be is not asked.
 * @param typed in the person's unit; finite
 * @throws RangeError for a flow or a length that is beyond belief
 */
export function fromCustom(quantity: SeriesQuantity, custom: Custom, typed: number): number {
  if (custom !== 'us') return typed;
  if (quantity === 'temperature') return ((typed - 32) * 5) / 9;
  if (quantity === 'temperature-difference') return (typed * 5) / 9;
  if (quantity === 'level') return toMetres(typed, 'in') * MM;
  if (quantity === 'top-off') return toCubicMetresPerSecond(typed, 'galUS/h') * PER_HOUR;
  return quantity === 'flow' ? toCubicMetresPerSecond(typed, 'galUS/h') * PER_HOUR : typed;
}

/** A reading with its unit: `readingSaid('temperature', 'us', 25)` reads "77.0 °F"; wet or dry of a floor. @param value finite */
export function readingSaid(quantity: SeriesQuantity, custom: Custom, value: number): string {
  if (quantity === 'leak') return value > 0 ? 'wet' : 'dry';
  const { symbol, decimals } = lookOf(quantity, custom);
  const written = toCustom(quantity, custom, value).toFixed(decimals);
  // −0.04 rounds to "-0.0", which reads as if the sign meant something.
  const plain = Number(written) === 0 ? written.replace('-', '') : written;
  return symbol === '' ? plain : `${plain}${NO_BREAK}${symbol}`;
}

/**
 * A difference of two readings with its unit, as exact as it was set: `differenceSaid('temperature', 'us', 0.5)` reads
 * "0.9 °F".
 *
 * @param value   in the facility file's unit of the quantity; finite
 */
export function differenceSaid(quantity: SensorQuantity, custom: Custom, value: number): string {
  const { symbol } = lookOf(quantity, custom);
  const shown = custom === 'us' && quantity === 'temperature' ? (value * 9) / 5 : toCustom(quantity, custom, value);
  const written = String(Number(shown.toPrecision(3)));
  return symbol === '' ? written : `${written}${NO_BREAK}${symbol}`;
}
