import type { FieldUnit as ShownUnit } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { type FieldUnit, unitOf } from '../facility/field-unit';

/** Units that a person of the American custom reads and writes in another way: as the files take it, and as it is shown. */
const AMERICAN: Partial<Record<FieldUnit | 'K', { text: string; symbol: string }>> = {
  C: { text: '°f', symbol: '°F' },
  L: { text: 'gal', symbol: 'US gal' },
  LPerH: { text: 'gal/h', symbol: 'US gal/h' },
  M2: { text: 'ft2', symbol: 'ft²' },
  Mm: { text: 'in', symbol: 'in' },
  M: { text: 'ft', symbol: 'ft' },
  G: { text: 'oz', symbol: 'oz' },
  GPerDay: { text: 'oz/day', symbol: 'oz per day' },
};
/** Digits with which a converted number is shown. */
const DIGITS = 6;
/** K, of which there is no field: the difference of two readings of a sensor. */
const K = { metric: { is: 'K', symbol: 'K' }, us: { is: 'K', symbol: '°F' } } as const;
const FAHRENHEIT_PER_KELVIN = 9 / 5;

/** A unit of the facility file as a person of this custom writes it. */
export function shownUnit(unit: FieldUnit, custom: Custom): ShownUnit {
  const other = custom === 'us' ? AMERICAN[unit]?.symbol : undefined;
  return { is: unit, symbol: other ?? (unit === 'number' ? '' : unitOf(unit).symbol) };
}

/** A difference of temperatures as a person of this custom writes it. */
export function shownDifference(custom: Custom): ShownUnit {
  return K[custom];
}

/**
 * A number of the facility file as a person of this custom reads it.
 *
 * @param value   in the unit of the file
 * @param is      field unit, or `K`
 * @returns       as it is in the file where the unit is the same; else with six digits
 */
export function shownNumber(value: number, is: string, custom: Custom): string {
  if (custom !== 'us') return String(value);
  if (is === 'K') return rounded(value * FAHRENHEIT_PER_KELVIN);
  const text = AMERICAN[is as FieldUnit]?.text;
  const conversion = text === undefined ? undefined : unitOf(is as FieldUnit).texts[text];
  if (conversion === undefined) return String(value);
  const { minus = 0, times = 1, over = 1 } = typeof conversion === 'number' ? { times: conversion } : conversion;
  return rounded((value * over) / times + minus);
}

/** A bare number that was typed by a person of this custom, as text with its unit, as the shapes read it. */
export function withOwnUnit(digits: string, is: string, custom: Custom): string {
  const text = custom === 'us' ? AMERICAN[is as FieldUnit]?.text : undefined;
  return text === undefined ? digits : `${digits} ${text}`;
}

/** A difference in K that was typed by a person of this custom. */
export function kelvin(typed: number, custom: Custom): number {
  return custom === 'us' ? typed / FAHRENHEIT_PER_KELVIN : typed;
}

function rounded(value: number): string {
  return String(Number(value.toPrecision(DIGITS)));
}
