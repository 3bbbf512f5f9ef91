import type { LineFigure, Measure } from '../../result';

/** A number as people write it: no more than so many decimals, and none that are 0. */
export function plain(value: number, decimals = 1): string {
  // Adding 0 turns a negative zero, which would read "-0", into a plain one.
  return String(Number(value.toFixed(decimals)) + 0);
}

/** A number with its unit; a figure nobody knows (NaN) says so. */
export function amount(value: number, unit: string, decimals = 1): string {
  if (Number.isNaN(value)) return 'not known';
  return `${plain(value, decimals)} ${unit}`;
}

/** Units that not everybody reads. */
const KINDS: Readonly<Record<string, Measure['kind']>> = {
  '°C': 'temperature',
  K: 'difference',
  L: 'volume',
  mm: 'length',
  'L/h': 'flow',
};

/** One figure of a breach, ready to read. */
export function figure(name: string, value: number, unit: string, decimals = 1): LineFigure {
  const said = { name, value: amount(value, unit, decimals) };
  const kind = Object.hasOwn(KINDS, unit) ? KINDS[unit] : undefined;
  return kind === undefined || Number.isNaN(value) ? said : { ...said, measure: { kind, value } };
}

/** Names as they stand in a sentence: "A, B and C". */
export function listed(names: readonly string[]): string {
  if (names.length < 2) return names[0] ?? '';
  return `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
}
