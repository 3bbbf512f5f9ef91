import { groupOf, isSame, isThere, listOf, textOf, unitIn } from '#core/forms/draft';
import type { Draft, DraftGroup, Field, FieldUnit, UnitHint } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { type FieldUnit as FileUnit, fromText, unitOf } from '../facility/field-unit';
import { kelvin, withOwnUnit } from './shown-unit';

const BARE_NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

/** What a form showed at first, with the thing it was made from: what nobody touched is taken over as it was. */
export interface Untouched {
  draft: Draft | undefined;
  held: unknown;
}

/**
 * What was typed, in the form of the facility file. What cannot be read stays as it was typed, for the shapes to name.
 *
 * @param fields   the fields of the form
 * @param draft    what was typed; parts that belong to no field are passed over
 * @param custom   the person's units: a bare number is in these
 * @param before   what the form showed, so that a number which was only shown in another unit is not rounded
 */
export function readDraft(
  fields: readonly Field[],
  draft: DraftGroup,
  custom: Custom,
  before?: Untouched,
): Record<string, unknown> {
  const shown = groupOf(before?.draft);
  const held = (before?.held ?? {}) as Record<string, unknown>;
  const parts = fields
    .filter((field) => isThere(field, draft))
    .map((field) => {
      const { name } = field;
      const known = before && isInSameUnit(field, draft, shown) ? { draft: shown[name], held: held[name] } : undefined;
      return [name, readPart(field, draft[name], draft, custom, known)] as const;
    });
  return Object.fromEntries(parts.filter(([, part]) => part !== undefined));
}

/** Whether a number still is in the unit it was shown in: that may hang on what a neighbour chooses. */
function isInSameUnit(field: Field, draft: DraftGroup, shown: DraftGroup): boolean {
  return field.kind !== 'number' || unitIn(field.unit, draft).is === unitIn(field.unit, shown).is;
}

function readPart(
  field: Field,
  draft: Draft | undefined,
  beside: DraftGroup,
  custom: Custom,
  before: Untouched | undefined,
): unknown {
  if (before && isSame(draft, before.draft)) return before.held;
  switch (field.kind) {
    case 'number':
      return readNumber(textOf(draft), field.unit, beside, custom);
    case 'figure':
      return readFigure(groupOf(draft), field.unit, custom);
    case 'choices':
      return readChoices(field, listOf(draft));
    case 'answered-by': {
      const { by, people } = groupOf(draft);
      return by === 'people' ? listOf(people) : textOf(by) || undefined;
    }
    case 'group':
      return draft === undefined ? undefined : readGroup(field.fields, groupOf(draft), custom, before);
    case 'list':
      if (draft === undefined && field.optional) return undefined;
      return listOf(draft).map((member) => readMember(field.item, member, custom, before));
    case 'one-of':
      return draft === undefined ? undefined : readOneOf(field, groupOf(draft), custom, before);
    case 'text':
      return readText(textOf(draft), field.long);
    case 'key':
    case 'date':
    case 'time':
      return readText(textOf(draft), false);
    case 'choice':
      return field.isTruth ? readTruth(textOf(draft)) : readText(textOf(draft), false);
  }
}

function readChoices({ optional, numbers }: Extract<Field, { kind: 'choices' }>, chosen: Draft[]): unknown {
  if (optional && chosen.length === 0) return undefined;
  return numbers ? chosen.map(Number) : chosen;
}

/** A band is a group on screen and a pair in the file. */
function readGroup(fields: readonly Field[], draft: DraftGroup, custom: Custom, before?: Untouched): unknown {
  const read = readDraft(fields, draft, custom, before);
  return fields.every(({ name }) => /^\d$/.test(name)) ? fields.map(({ name }) => read[name]) : read;
}

function readOneOf(
  { by, of }: Extract<Field, { kind: 'one-of' }>,
  draft: DraftGroup,
  custom: Custom,
  before?: Untouched,
): unknown {
  const value = textOf(draft[by]);
  const fields = of.find((one) => one.value === value)?.fields;
  return fields ? { [by]: value, ...readDraft(fields, draft, custom, before) } : undefined;
}

/** A member that stood in the list before, at whatever place, is taken over as it was. */
function readMember(fields: readonly Field[], draft: Draft, custom: Custom, before?: Untouched): unknown {
  const at = listOf(before?.draft).findIndex((one) => isSame(one, draft));
  const held: unknown = Array.isArray(before?.held) ? before.held[at] : undefined;
  return held ?? readDraft(fields, groupOf(draft), custom);
}

function readFigure(draft: DraftGroup, unit: FieldUnit, custom: Custom): unknown {
  const read = (part: Draft | undefined) => readNumber(textOf(part), unit, {}, custom);
  if (draft.hours !== undefined) return listOf(draft.hours).map((hour) => read(hour) ?? '');
  const from = textOf(draft.from);
  if (from === 'unknown') return 'unknown';
  const [value, low, high] = [draft.value, draft.low, draft.high].map(read);
  const source = readText(textOf(draft.source), true);
  const beside = Object.entries({ low, high, source }).filter(([, part]) => part !== undefined);
  if (beside.length === 0 && (value === undefined || from === 'entered' || from === '')) return value;
  return { value, from: from || 'entered', ...Object.fromEntries(beside) };
}

/** True or false; anything else as it was typed, for the shape to name. */
function readTruth(chosen: string): unknown {
  return chosen === 'true' ? true : chosen === 'false' ? false : readText(chosen, false);
}

/** A line without blanks at its ends, which nobody means; undefined where nothing is typed. */
function readText(typed: string, isLong: boolean): string | undefined {
  const line = typed.trim();
  return line === '' ? undefined : isLong ? typed : line;
}

/** A number in the field's unit; a text with another unit, for the shape to read; undefined where nothing is typed. */
function readNumber(typed: string, unit: UnitHint, beside: DraftGroup, custom: Custom): unknown {
  const text = typed.trim();
  if (text === '') return undefined;
  const { is } = unitIn(unit, beside);
  if (!BARE_NUMBER.test(text)) return 'by' in unit ? inFile(text, is) : text;
  if (is === 'K') return kelvin(Number(text), custom);
  const withUnit = withOwnUnit(text, is, custom);
  return withUnit === text ? Number(text) : inFile(withUnit, is);
}

function inFile(text: string, is: string): unknown {
  return is === 'K' || !unitOf(is as FileUnit) ? text : (fromText(text, is as FileUnit) ?? text);
}
