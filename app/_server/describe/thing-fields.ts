import 'server-only';
import type { System } from '#core/facility/system';
import type { Field } from '#core/forms/field';
import type { Act, ThingNoun } from '#shape/describe/edit';
import { formOf, type FormPlace } from './form-of';
import { THING_KINDS } from './things';
import { WHY_WHEN } from './why-when';

/** What a new thing comes with that is changed elsewhere afterwards. */
const COMES_WITH: Partial<Record<ThingNoun, readonly string[]>> = { equipment: ['plan'] };

/**
 * The fields of the form for something that is done to the description of a thing.
 *
 * @param noun    what it is
 * @param act     what is done
 * @param place   where it stands, and the person's custom
 */
export function thingFields(noun: ThingNoun, act: Act, place: FormPlace): Field[] {
  if (act === 'retire') return [...WHY_WHEN];
  if (act === 'move') return [moveField(noun, place), ...WHY_WHEN];
  const { shape, key, apart } = THING_KINDS[noun];
  const all = formOf(shape, place).map(withoutOwnWord);
  if (act === 'add') {
    const there = COMES_WITH[noun] ?? [];
    return nameFirst(all.filter(({ name }) => there.includes(name) || !apart.includes(name)));
  }
  const fields = all.filter(({ name }) => name !== key && !apart.includes(name));
  return act === 'replace' ? [...fields, ...WHY_WHEN] : fields;
}

/** The same fields with the key after the name it is made from. */
export function nameFirst(fields: readonly Field[]): Field[] {
  const key = fields.find(({ kind }) => kind === 'key');
  const at = fields.findIndex(({ name }) => name === 'name' || name === 'group');
  if (!key || at < 0) return [...fields];
  return fields.filter((field) => field !== key).flatMap((field) => (field === fields[at] ? [field, key] : [field]));
}

/** A plan that is written with its equipment stands on nobody's own word yet. */
function withoutOwnWord(field: Field): Field {
  if (field.name !== 'plan' || field.kind !== 'group') return field;
  return { ...field, fields: field.fields.filter(({ name }) => name !== 'ownWord') };
}

/** Where a thing is to go: another system, or another tank of its own. */
function moveField(noun: ThingNoun, { facility }: FormPlace): Field {
  return {
    name: 'to',
    label: 'To',
    about: '',
    optional: false,
    first: true,
    kind: 'one-of',
    by: 'system',
    of: facility.systems.map((system) => ({
      value: system.key,
      name: system.name,
      fields: [tankField(noun, system), keyField()],
    })),
  };
}

function tankField(noun: ThingNoun, { tanks }: System): Field {
  return {
    name: 'tank',
    label: 'Tank',
    about: noun === 'sensor' ? 'Left empty for a sensor that sits in no tank.' : '',
    optional: noun === 'sensor',
    first: true,
    kind: 'choice',
    options: tanks.map(({ key, name }) => ({ value: key, name })),
  };
}

function keyField(): Field {
  return {
    name: 'key',
    label: 'Key there',
    about: 'Only where something there has its key already.',
    optional: true,
    first: true,
    kind: 'text',
    long: false,
  };
}
