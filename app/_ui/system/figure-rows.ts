import type { Figure, Origin } from '#core/facility/figure';
import type { Custom } from '#core/units/shown';
import { type FigureKind, figure } from '../units/figures';
import fields from './fields.json';

/** One figure of the description with where it comes from. */
export interface FigureRow {
  key: string;
  /** What it is a figure of. */
  of: string;
  name: string;
  value: string;
  /** Plausible range; empty when the number is taken as exact. */
  range: string;
  origin: Origin;
  source: string;
}

const FIELDS: Record<string, { name: string; kind?: string; unit?: string }> = fields;

/** Every figure a thing of the description holds, in the person's units. */
export function figureRows(thing: object, of: string, units: Custom): FigureRow[] {
  return Object.entries(thing).flatMap(([field, value]) => {
    if (isFigure(value)) return [rowOf(field, value, of, units)];
    if (field === 'wall' && typeof value === 'object' && value !== null) return figureRows(value, of, units);
    return [];
  });
}

function rowOf(field: string, value: Figure, of: string, units: Custom): FigureRow {
  const { name = field, kind, unit = '' } = FIELDS[field] ?? {};
  const said = (n: number) =>
    kind === undefined ? `${round(n)}${unit ? `\u00a0${unit}` : ''}` : figure(units, kind as FigureKind, n);
  const { low, high } = value;
  return {
    key: `${of} ${field}`,
    of,
    name,
    value: value.value === null ? 'unknown' : said(value.value),
    range:
      low === undefined && high === undefined
        ? ''
        : `${low === undefined ? '…' : said(low)} to ${high === undefined ? '…' : said(high)}`,
    origin: value.value === null ? 'unknown' : value.origin,
    source: value.source ?? '',
  };
}

function isFigure(value: unknown): value is Figure {
  return typeof value === 'object' && value !== null && 'origin' in value && 'value' in value;
}

function round(n: number): string {
  return String(Number(n.toPrecision(4)));
}
