import 'server-only';
import { DEFAULTS } from '#core/equipment/defaults';
import type { InputNote } from '#core/equipment/take';
import type { Field, FieldUnit, Start } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import type { ThingNoun } from '#shape/describe/edit';
import { shownNumber } from '#shape/form/shown-unit';
import starts from './starts.json';

/** One entry of the table of defaults. */
interface Default {
  value: number;
  low: number;
  high: number;
  unit: string;
  source: string;
  confidence: string;
}

/**
 * Which default stands for a field: one by name; or by a neighbour a table that has one for each of its choices, or names
 * for choices of it, several of them parted by blanks.
 */
type Rule = string | Readonly<Record<string, string | Readonly<Record<string, string>>>>;

const RULES = starts as Partial<Record<ThingNoun, Record<string, Rule>>>;
/** Units of defaults that are those of the field; others are multiples of something else and say so. */
const PLAIN_UNITS = new Set(['mm', 'min', 's', 'h', 'm', 'L/h', 'W']);

/**
 * Says beside each field what is used until something is entered, with its source. Nothing of it is ever written in.
 *
 * @param notes   what the model takes for this very thing, by field; only for a thing that is there already
 */
export function withStarts(
  fields: readonly Field[],
  noun: ThingNoun,
  notes: ReadonlyMap<string, InputNote>,
  custom: Custom,
  within = '',
): Field[] {
  return fields.map((field) => {
    const path = `${within}${field.name}`;
    if (field.kind === 'group') return { ...field, fields: withStarts(field.fields, noun, notes, custom, `${path}.`) };
    if (field.kind !== 'figure') return field;
    const note = notes.get(field.name);
    const found = note
      ? [startOf(note as InputNote & { confidence?: string }, field.unit, custom)]
      : startsOf(RULES[noun]?.[path], field.unit, custom);
    return found.length === 0 ? field : { ...field, starts: found };
  });
}

function startsOf(rule: Rule | undefined, unit: FieldUnit, custom: Custom): Start[] {
  if (rule === undefined) return [];
  if (typeof rule === 'string') return entriesOf(rule).map(([, entry]) => startOf(entry, unit, custom));
  return Object.entries(rule).flatMap(([field, by]) =>
    choicesOf(by).map(([choices, entry]) => ({
      ...startOf(entry, unit, custom),
      for: { field, in: choices.split(' ') },
    })),
  );
}

function choicesOf(by: string | Readonly<Record<string, string>>): [string, Default][] {
  if (typeof by === 'string') return entriesOf(by);
  return Object.entries(by).flatMap(([choices, name]) =>
    entriesOf(name).map(([, entry]): [string, Default] => [choices, entry]),
  );
}

/** The default of this name, or each of those that stand under it by choice. */
function entriesOf(name: string): [string, Default][] {
  const found: unknown = (DEFAULTS as Record<string, unknown>)[name];
  if (typeof found !== 'object' || found === null) throw new Error(`There is no default ${name}`);
  return 'value' in found ? [[name, found as Default]] : Object.entries(found as Record<string, Default>);
}

function startOf(
  { value, low, high, unit, source, confidence = '' }: Omit<Default, 'confidence'> & { confidence?: string },
  field: FieldUnit,
  custom: Custom,
): Start {
  const isPlain = PLAIN_UNITS.has(unit);
  const said = (number: number) =>
    isPlain
      ? `${custom === 'us' ? rounded(Number(shownNumber(number, field.is, custom))) : number}\u00a0${field.symbol}`
      : `${rounded(number)}\u00a0${unit}`.trim();
  return { value: said(value), range: low === high ? '' : `${said(low)} to ${said(high)}`, source, confidence };
}

function rounded(number: number): string {
  return String(Number(number.toPrecision(4)));
}
