import type { OpenInput } from '#core/review/result';
import type { Custom } from '#core/units/shown';
import { type FigureKind, figure } from '../units/figures';
import fields from './fields.json';

const KINDS: Record<string, FigureKind> = {
  mm: 'length',
  L: 'volume',
  'L/h': 'flow',
  'm²': 'area',
  g: 'mass',
  '°C': 'temperature',
  K: 'difference',
};

const FIELDS: Readonly<Record<string, { kind?: string; unit?: string }>> = fields;
const UNITS: Readonly<Record<string, string>> = {
  length: 'mm',
  volume: 'L',
  flow: 'L/h',
  temperature: '°C',
  area: 'm²',
  mass: 'g',
};

/** The plausible range of a figure, in the person's units. */
export function rangeSaid(units: Custom, { low, high, ...input }: OpenInput): string {
  const unit = unitOfInput(input);
  // A unit of several words is said once: "0.08 to 0.102 g of ammonia nitrogen per g of protein fed".
  const isLong = KINDS[unit] === undefined && unit.includes(' ') && low != null && high != null;
  return `${inputSaid(units, low ?? null, isLong ? '' : unit)} to ${inputSaid(units, high ?? null, unit)}`;
}

/** A figure that a review went by, in the person's units. */
export function inputSaid(units: Custom, value: number | null, unit: string): string {
  if (value === null) return 'unknown';
  const kind = KINDS[unit];
  return kind ? figure(units, kind, value) : `${Number(value.toPrecision(3))}${unit ? `\u00a0${unit}` : ''}`;
}

/** The unit of a figure: as the review tells it, else that of its field. */
export function unitOfInput({ unit, path }: Pick<OpenInput, 'unit' | 'path'>): string {
  if (unit !== '') return unit;
  const field = FIELDS[path.split('/').at(-1) ?? ''];
  return (field?.kind === undefined ? field?.unit : UNITS[field.kind]) ?? '';
}
