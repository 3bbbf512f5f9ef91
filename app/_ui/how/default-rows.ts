import { DEFAULTS } from '#core/equipment/defaults';
import words from './defaults.json';

/** One default figure as it is shown. */
export interface DefaultRow {
  name: string;
  value: string;
  range: string;
  source: string;
  confidence: string;
}

interface Entry {
  value: number;
  low: number;
  high: number;
  unit: string;
  source: string;
  confidence: string;
}

const WORDS: Record<string, string> = words;

/** Every default figure, those by type one row a type. */
export function defaultRows(): DefaultRow[] {
  return Object.entries(DEFAULTS).flatMap(([name, entry]) => {
    const said = WORDS[name] ?? name;
    return isEntry(entry)
      ? [rowOf(said, entry)]
      : Object.entries(entry).flatMap(([type, own]) =>
          isEntry(own) ? [rowOf(`${said}: ${type.replace('-', ' ')}`, own)] : [],
        );
  });
}

function rowOf(name: string, { value, low, high, unit, source, confidence }: Entry): DefaultRow {
  return {
    name,
    value: `${value}${unit ? `\u00a0${unit}` : ''}`,
    range: low === high ? 'exact' : `${low} to ${high}`,
    source,
    confidence,
  };
}

function isEntry(value: unknown): value is Entry {
  return typeof value === 'object' && value !== null && 'value' in value && 'source' in value;
}
