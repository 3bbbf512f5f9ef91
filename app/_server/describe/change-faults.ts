import 'server-only';
import type { Path } from '#core/facility/path';
import type { Field, FieldFault } from '#core/forms/field';
import type { FacilityForm } from '#data/facility/form';
import { isoDate } from '#shape/facility/words';
import type { FormFault } from '#shape/facility/check-form';
import { fieldWords } from '../facility/value-words';
import type { Edited } from './apply-edit';
import type { Fields } from './find-thing';
import { formMessage } from './form-message';

/**
 * Faults of a changed facility as the form can show them: by the field where it has one, in the order of the fields; first
 * those that stand elsewhere, in words.
 *
 * @param fields   of the form
 */
export function fieldFaults(
  faults: readonly FormFault[],
  { form, path }: Edited,
  fields: readonly Field[],
): FieldFault[] {
  const told = faults.map((fault): FieldFault => {
    const isOfThing = path?.every((step, at) => fault.path[at] === step) === true;
    const within = isOfThing && path ? fieldPath(fault.path.slice(path.length), fields) : null;
    if (within !== null) return { path: within, message: formMessage(fault.message) };
    return { path: '', message: `${placeWords(form, fault.path)}: ${fault.message}` };
  });
  const rank = ({ path: at }: FieldFault) => fields.findIndex(({ name }) => name === at.split('.')[0]);
  return told.sort((a, b) => rank(a) - rank(b));
}

/** Where a part of a thing stands in a form; null when the form has no such field. */
function fieldPath(path: Path, fields: readonly Field[]): string | null {
  const [name] = path;
  if (fields.some((field) => field.name === name)) return path.join('.');
  const to = fields.find((field) => field.name === 'to');
  const isThere = to?.kind === 'one-of' && to.of.some((one) => one.fields.some((field) => field.name === name));
  return isThere ? ['to', ...path].join('.') : null;
}

/** What is wrong with the reason and the day that an act has to come with. */
export function reasonFaults({ why, on }: Edited, today: string): FieldFault[] {
  const isDay = isoDate('').safeParse(on).success;
  return [
    ...(why === undefined ? [{ path: 'why', message: 'is missing' }] : []),
    ...(isDay ? [] : [{ path: 'on', message: 'must be a day of the calendar' }]),
    ...(isDay && on !== undefined && on > today ? [{ path: 'on', message: 'must not lie ahead' }] : []),
  ];
}

/** Where something stands, by the names of what leads to it: `Reef, Heater 1, circuit`. */
function placeWords(form: FacilityForm, path: Path): string {
  const words: string[] = [];
  let part: unknown = form;
  for (const step of path) {
    part = typeof part === 'object' && part !== null ? (part as Fields)[step] : undefined;
    const { name, group, key } = (typeof part === 'object' && part !== null ? part : {}) as Fields;
    if (typeof step === 'number') words.push(String(name ?? group ?? key ?? step + 1));
    else if (!Array.isArray(part)) words.push(fieldWords(step));
  }
  return words.join(', ');
}
