import type { Figure } from '#core/facility/figure';
import { z } from 'zod';
import { hinted } from '../form/hints';
import { type Bounds, bareAmount, wanted, withUnit } from './amount';
import { type FieldUnit, unitOf } from './field-unit';
import { fieldsOnly } from './noun';
import { freeText } from './words';

const made = new Map<FieldUnit, ReturnType<typeof bareFigure>>();

/**
 * A figure with where it comes from. A file gives it as a number (entered), as text with a unit, as `unknown`, or with
 * its provenance and plausible range as `{ value, from, low, high, source }`.
 *
 * @param unit   unit of the field
 * @param about  what the figure is, for whoever writes the file
 * @param bounds hard bounds, in the field's unit, where they differ from the unit's own
 */
export function figure(unit: FieldUnit, about: string, bounds?: Bounds) {
  return (bounds ? bareFigure(unit, bounds) : shared(unit)).describe(withUnit(about, unit));
}

/** One schema a unit, so that the published JSON Schema names it once. */
function shared(unit: FieldUnit) {
  const found = made.get(unit) ?? bareFigure(unit).meta({ id: `figure-${unit}`, description: figureForm(unit) });
  made.set(unit, found);
  return found;
}

function figureForm(unit: FieldUnit): string {
  return `A figure (${unitOf(unit).symbol}): a number, "unknown", text with a unit, or value, from, low, high and source.`;
}

function bareFigure(unit: FieldUnit, bounds?: Bounds) {
  const number = bareAmount(unit, bounds);
  const detailed = fieldsOnly({
    value: number.describe(withUnit('The figure itself', unit)),
    from: z.enum(['measured', 'entered', 'default']).optional().describe('Where it comes from; entered when left out.'),
    low: number.optional().describe(withUnit('Lower end of the plausible range', unit)),
    high: number.optional().describe(withUnit('Upper end of the plausible range', unit)),
    source: freeText('Who measured it, or where it stands written.').optional(),
  });
  const error = `${wanted(unit)}, or "unknown", or an object with value and from`;
  const shape = z.codec(z.union([number, z.literal('unknown'), detailed], { error }), z.custom<Figure>(isFigure), {
    decode: (given, ctx): Figure => {
      if (given === 'unknown') return { value: null, origin: 'unknown' };
      if (typeof given === 'number') return { value: given, origin: 'entered' };
      const { from, ...rest } = given;
      if (!inOrder(rest)) ctx.issues.push({ code: 'custom', input: given, message: 'must have low ≤ value ≤ high' });
      return { ...rest, origin: from ?? 'entered' };
    },
    encode: (held) => {
      const { value, origin, low, high, source } = held;
      if (value === null || origin === 'unknown') return 'unknown' as const;
      if (origin === 'entered' && low === undefined && high === undefined && source === undefined) return value;
      return { value, ...(origin === 'entered' ? {} : { from: origin }), low, high, source };
    },
  });
  return hinted(shape, { as: 'figure', unit });
}

/** What a figure must be before it can be written: a value unless unknown, and nothing beside it when unknown. */
function isFigure(held: unknown): boolean {
  if (typeof held !== 'object' || held === null || !('value' in held)) return false;
  const { value, origin, low, high, source } = held as Figure;
  if (origin !== 'unknown') return value !== null && inOrder({ value, low, high });
  return value === null && low === undefined && high === undefined && source === undefined;
}

function inOrder({ value, low, high }: { value: number; low?: number; high?: number }): boolean {
  return (low ?? value) <= value && value <= (high ?? value);
}
