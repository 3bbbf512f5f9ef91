import 'server-only';
import type { Figure } from '#core/facility/figure';
import { type FieldUnit, unitOf } from '#shape/facility/field-unit';

/** Units that the end of a field's name may say, the longest first. */
const ENDS: readonly FieldUnit[] = [
  'LPerHPerMm',
  'MgPerKgH',
  'GPerDay',
  'LPerH',
  'WPerK',
  'Days',
  'MgL',
  'Min',
  'Pct',
  'M2',
  'Mm',
  'A',
  'C',
  'G',
  'H',
  'L',
  'M',
  'S',
  'V',
  'W',
];

function unitEnd(field: string): FieldUnit | undefined {
  return ENDS.find((end) => field.endsWith(end) && field.length > end.length);
}

/** The name of a field in words, without its unit: `testEveryDays` is `test every`. */
export function fieldWords(field: string): string {
  const end = unitEnd(field);
  const bare = end === undefined ? field : field.slice(0, -end.length);
  return bare.replace(/[A-Z]+/g, (capitals) => ` ${capitals.length > 1 ? capitals : capitals.toLowerCase()}`).trim();
}

/**
 * The value of a field in words, with its unit.
 *
 * @param value   JSON data, or a figure
 * @param field   name of the field it stands in
 */
export function valueWords(value: unknown, field: string): string {
  const end = unitEnd(field);
  const unit = end === undefined ? '' : ` ${unitOf(end).symbol}`;
  if (typeof value === 'number') return `${value}${unit}`;
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map((one) => valueWords(one, field)).join(', ');
  if (typeof value !== 'object' || value === null) return String(value);
  if (isFigure(value)) return figureWords(value, unit);
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .map(([name, part]) => `${fieldWords(name)} ${valueWords(part, name)}`)
    .join(', ');
}

function isFigure(value: object): value is Figure {
  return 'origin' in value && 'value' in value;
}

function figureWords({ value, origin, low, high, source }: Figure, unit: string): string {
  if (value === null) return 'unknown';
  const range = low === undefined && high === undefined ? '' : `${low ?? value} to ${high ?? value}`;
  const notes = [origin === 'entered' ? '' : origin, range, source ?? ''].filter((note) => note !== '');
  return `${value}${unit}${notes.length === 0 ? '' : ` (${notes.join('; ')})`}`;
}
