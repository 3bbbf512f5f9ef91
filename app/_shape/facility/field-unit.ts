import units from './field-units.json';

/** Units a field of the facility file can be in: the end of the field's name, or what the field stands for. */
export type FieldUnit = keyof typeof units;

/** How another unit becomes the field's: `(number − minus) × times ÷ over`. A bare number is `times`. */
type Conversion = number | { minus?: number; times?: number; over?: number };

interface Unit {
  symbol: string;
  /** A number in another unit, as a file may give it. */
  example?: string;
  /** Smallest value that is taken; `more`: every value must be more than this. */
  least?: number;
  more?: number;
  most: number;
  texts: Record<string, Conversion>;
}

/** A number, blank space if any, and something that may be a unit. */
export const NUMBER_WITH_UNIT = /^\s*[+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?\s*[^\s\d.].*$/;
const PARTS = /^\s*([+-]?\d+(?:\.\d+)?(?:[eE][+-]?\d+)?)\s*([^\s\d.].*?)\s*$/;

/** @returns what is known of a field unit: how it is shown, its hard bounds, the units that turn into it */
export function unitOf(unit: FieldUnit): Unit {
  return units[unit];
}

/**
 * A number with its unit, in the unit of the field.
 *
 * The factors are those of `units`, exact by definition, but straight into the field's unit, so that 120 gal is
 * 454.24941408 L and not a rounding away from it. A test holds the two tables together.
 *
 * @param text  for example `78 °F`, `120 gal`; `gal` is the US gallon, `imp gal` the British one
 * @param unit  unit of the field
 * @returns the number in the field's unit; null when the text is not a number with a unit that can become it
 */
export function fromText(text: string, unit: FieldUnit): number | null {
  const [, digits, name] = PARTS.exec(text) ?? [];
  if (digits === undefined || name === undefined) return null;
  const { texts } = unitOf(unit);
  const known = normalise(name);
  const conversion = Object.hasOwn(texts, known) ? texts[known] : undefined;
  if (conversion === undefined) return null;
  const { minus = 0, times = 1, over = 1 } = typeof conversion === 'number' ? { times: conversion } : conversion;
  return ((Number(digits) - minus) * times) / over;
}

function normalise(name: string): string {
  return name.toLowerCase().replace(/\s+/g, ' ').replace('²', '2').replace('³', '3').replace('º', '°');
}
