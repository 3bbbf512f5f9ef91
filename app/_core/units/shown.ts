import preferred from './preferred.json';
import table from './shown.json';

/** Units that a person may see. */
export type ShownUnit = keyof typeof table;

/** The two customs of units a person can choose between. */
export type Custom = keyof typeof preferred;

/** Quantities that have a unit in either custom. */
export type ShownQuantity = keyof (typeof preferred)['metric'];

/** How a unit is written. */
export interface UnitLook {
  readonly quantity: string;
  readonly symbol: string;
  readonly decimals: number;
}

/** Space that keeps a number and its unit on one line. */
const NO_BREAK = '\u00a0';

/** @returns symbol and decimals of a unit */
export function lookOf(unit: ShownUnit): UnitLook {
  return table[unit];
}

/** @returns the unit a person of this custom reads the quantity in */
export function unitFor(custom: Custom, quantity: ShownQuantity): ShownUnit {
  // `tests/core/units/shown.test.ts` holds every entry of the file to being a unit of the table.
  return preferred[custom][quantity] as ShownUnit;
}

/**
 * A value as it is shown, with a point for the decimals.
 * @param value already in `unit`
 * @throws RangeError when it is not a number
 */
export function show(value: number, unit: ShownUnit): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} ${unit} is not a number`);
  const { symbol, decimals } = table[unit];
  const written = value.toFixed(decimals);
  // −0.04 rounds to "-0.0", which reads as if the sign meant something.
  const plain = Number(written) === 0 ? written.replace('-', '') : written;
  return `${plain}${NO_BREAK}${symbol}`;
}
