import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { type FigureKind, figure } from '../units/figures';

const KINDS: Record<string, FigureKind> = {
  mm: 'length',
  L: 'volume',
  'L/h': 'flow',
  '°C': 'temperature',
  K: 'difference',
};

/** The plausible range of a figure, in the person's units. */
export function rangeSaid(units: Custom, { low, high, unit }: OpenInput): string {
  return `${inputSaid(units, low ?? null, unit)} to ${inputSaid(units, high ?? null, unit)}`;
}

/** A figure that a review went by, in the person's units. */
export function inputSaid(units: Custom, value: number | null, unit: string): string {
  if (value === null) return 'unknown';
  const kind = KINDS[unit];
  return kind ? figure(units, kind, value) : `${Number(value.toPrecision(3))}${unit ? `\u00a0${unit}` : ''}`;
}
