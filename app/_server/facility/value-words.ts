import 'server-only';
import type { Figure } from '#core/facility/figure';
import type { Custom } from '#core/units/shown';
import type { FieldUnit } from '#shape/facility/field-unit';
import { shownNumber, shownUnit } from '#shape/form/shown-unit';

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

/** Digits of a number that came from another unit. */
const DIGITS = 6;

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
 * @param custom  units to say it in; the record is written in those of the files
 */
export function valueWords(value: unknown, field: string, custom: Custom = 'metric'): string {
  const end = unitEnd(field);
  if (typeof value === 'number') return numberWords(value, end, custom);
  if (Array.isArray(value))
    return value.length === 0 ? 'none' : value.map((one) => valueWords(one, field, custom)).join(', ');
  if (typeof value !== 'object' || value === null) return String(value);
  if (isFigure(value)) return figureWords(value, end, custom);
  return Object.entries(value)
    .filter(([, part]) => part !== undefined)
    .map(([name, part]) => `${fieldWords(name)} ${valueWords(part, name, custom)}`)
    .join(', ');
}

function isFigure(value: object): value is Figure {
  return 'origin' in value && 'value' in value;
}

/** A number with its unit, with as many digits as anybody measures. */
function numberWords(value: number, unit: FieldUnit | undefined, custom: Custom): string {
  if (unit === undefined) return String(value);
  const { symbol } = shownUnit(unit, custom);
  return `${Number(Number(shownNumber(value, unit, custom)).toPrecision(DIGITS))} ${symbol}`;
}

function figureWords(
  { value, origin, low, high, source }: Figure,
  unit: FieldUnit | undefined,
  custom: Custom,
): string {
  if (value === null) return 'unknown';
  const said = (number: number) => numberWords(number, unit, custom);
  const range = low === undefined && high === undefined ? '' : `${said(low ?? value)} to ${said(high ?? value)}`;
  const notes = [origin === 'entered' ? '' : origin, range, source ?? ''].filter((note) => note !== '');
  return `${said(value)}${notes.length === 0 ? '' : ` (${notes.join('; ')})`}`;
}
