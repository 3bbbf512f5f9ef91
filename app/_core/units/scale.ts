/**
 * What this room knows: the units people read and write, and the exact factors between them and those of the core.
 * What it leaves out: salinity as specific gravity, which needs a law, and the language a number is spoken in.
 * Where the numbers come from: international definitions (yard and pound agreement of 1959; gallons by statute).
 */

/** Units that differ by a factor alone, and the span beyond which a value can only be a slip. */
export interface Scale<U extends string> {
  readonly quantity: string;
  /** How many of the core's units one of these is. */
  readonly factors: Readonly<Record<U, number>>;
  /** Least and greatest value believed, in the core's unit; both are still accepted. */
  readonly low: number;
  readonly high: number;
}

/**
 * A value in the core's unit.
 * @param value in `unit`
 * @throws RangeError naming the quantity, when the value is not a number or beyond belief
 */
export function toCore<U extends string>(scale: Scale<U>, value: number, unit: U): number {
  return believed(scale, value * scale.factors[unit], `${value} ${unit}`);
}

/**
 * A value of the core's in another unit.
 * @param value in the core's unit
 * @throws RangeError naming the quantity, when the value is not a number or beyond belief
 */
export function fromCore<U extends string>(scale: Scale<U>, value: number, unit: U): number {
  return believed(scale, value, `${value}`) / scale.factors[unit];
}

/**
 * The value itself, if it can be meant.
 * @param value  in the core's unit
 * @param spoken how the person wrote it, for the message
 * @throws RangeError naming the quantity
 */
export function believed(
  scale: Pick<Scale<string>, 'quantity' | 'low' | 'high'>,
  value: number,
  spoken: string,
): number {
  if (!Number.isFinite(value)) throw new RangeError(`${scale.quantity}: ${spoken} is not a number`);
  if (value < scale.low || value > scale.high) throw new RangeError(`${scale.quantity}: ${spoken} cannot be meant`);
  return value;
}
