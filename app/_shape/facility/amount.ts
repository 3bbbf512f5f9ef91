import { z } from 'zod';
import { hinted } from '../form/hints';
import { type FieldUnit, fromText, NUMBER_WITH_UNIT, unitOf } from './field-unit';

/** Hard bounds of one field where they are not those of its unit. */
export interface Bounds {
  least?: number;
  most?: number;
}

/**
 * A plain number of the description. A file may also give it as text with a unit that turns into the field's own.
 *
 * @param unit   unit of the field
 * @param about  what the number is, for whoever writes the file
 * @param bounds hard bounds, in the field's unit, where they differ from the unit's own
 */
export function amount(unit: FieldUnit, about: string, bounds?: Bounds) {
  return bareAmount(unit, bounds).describe(withUnit(about, unit));
}

/** The same without a description, for use within a figure. */
export function bareAmount(unit: FieldUnit, bounds?: Bounds) {
  const plain = plainNumber(unit, bounds);
  const shape = z.codec(
    z.union([plain, z.string().regex(NUMBER_WITH_UNIT, { error: wanted(unit) })], { error: wanted(unit) }),
    plain,
    {
      decode: (given, ctx) => {
        const value = typeof given === 'number' ? given : fromText(given, unit);
        if (value !== null) return value;
        ctx.issues.push({ code: 'custom', input: given, message: wanted(unit) });
        return z.NEVER;
      },
      encode: (value) => value,
    },
  );
  return hinted(shape, { as: 'amount', unit });
}

/** What a field is, and in which unit, in one line. */
export function withUnit(about: string, unit: FieldUnit): string {
  return `${about} (${unitOf(unit).symbol}).`;
}

/** What was wanted where a number was not found. */
export function wanted(unit: FieldUnit): string {
  const { symbol, example } = unitOf(unit);
  return `must be a number (${symbol})${example === undefined ? '' : ` or a number with its unit such as ${example}`}`;
}

function plainNumber(unit: FieldUnit, bounds: Bounds | undefined): z.ZodNumber {
  const { least, more, most } = unitOf(unit);
  const upTo = z.number().lte(bounds?.most ?? most);
  if (bounds?.least !== undefined) return upTo.gte(bounds.least);
  return more === undefined ? upTo.gte(least ?? 0) : upTo.gt(more);
}
