import { emptyDraft, groupOf, textOf, unitIn } from '#core/forms/draft';
import type { Draft, DraftGroup, Field, FieldUnit } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { shownNumber } from './shown-unit';

type Held = Readonly<Record<string, unknown>>;

/**
 * What a form holds of a thing that is described already, as its person would have typed it.
 *
 * @param fields   the fields of the form
 * @param held     the thing in the form of the facility file
 * @param custom   the person's units
 */
export function draftOf(fields: readonly Field[], held: Held, custom: Custom): DraftGroup {
  const parts = fields.map((field) => [field.name, partOf(field, held[field.name], held, custom)] as const);
  return Object.fromEntries(parts.filter((part): part is [string, Draft] => part[1] !== undefined));
}

function partOf(field: Field, held: unknown, beside: Held, custom: Custom): Draft | undefined {
  if (held === undefined || held === null) return emptyDraft(field);
  switch (field.kind) {
    case 'number':
      return shown(held, unitIn(field.unit, beside as DraftGroup), custom);
    case 'figure':
      return figureDraft(held, field.unit, custom);
    case 'choices':
      return Array.isArray(held) ? held.map(String) : [];
    case 'answered-by':
      return Array.isArray(held) ? { by: 'people', people: held.map(String) } : { by: String(held), people: [] };
    case 'group':
      return draftOf(field.fields, held as Held, custom);
    case 'list':
      return (held as Held[]).map((member) => draftOf(field.item, member, custom));
    case 'one-of': {
      const value = textOf(groupOf(held as Draft)[field.by]);
      const fields = field.of.find((one) => one.value === value)?.fields ?? [];
      return { [field.by]: value, ...draftOf(fields, held as Held, custom) };
    }
    case 'text':
    case 'key':
    case 'date':
    case 'time':
    case 'choice':
      return String(held);
  }
}

function figureDraft(held: unknown, unit: FieldUnit, custom: Custom): Draft {
  if (held === 'unknown') return { value: '', from: 'unknown' };
  if (Array.isArray(held)) return { hours: held.map((hour) => shown(hour, unit, custom)) };
  if (typeof held !== 'object' || held === null) return { value: shown(held, unit, custom), from: 'entered' };
  const { value, from = 'entered', low, high, source } = held as Held;
  const ends = Object.entries({ low, high }).filter(([, end]) => end !== undefined);
  return {
    value: shown(value, unit, custom),
    from: String(from),
    ...Object.fromEntries(ends.map(([name, end]) => [name, shown(end, unit, custom)])),
    ...(source === undefined ? {} : { source: String(source) }),
  };
}

function shown(value: unknown, { is }: FieldUnit, custom: Custom): string {
  return typeof value === 'number' ? shownNumber(value, is, custom) : String(value ?? '');
}
