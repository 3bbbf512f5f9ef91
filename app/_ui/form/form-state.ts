import type { ComponentType } from 'react';
import { groupOf, keyFrom, textOf } from '#core/forms/draft';
import type { Draft, DraftGroup, Field, FieldFault } from '#core/forms/field';

/** Names and places from the top of a form. */
export type FieldPath = readonly (string | number)[];

/** What a form is given beside its fields. */
export interface FormState {
  faults: readonly FieldFault[];
  /** A part was changed; undefined takes it out. */
  change: (path: FieldPath, part: Draft | undefined) => void;
}

/** What the fields of a form, or of a group within one, are shown from. */
export interface FieldsProps {
  fields: readonly Field[];
  /** What was typed of these fields. */
  draft: DraftGroup;
  /** Where they stand; at the top when left out. */
  path?: FieldPath;
  state: FormState;
  /** What is not needed first is folded under this title. */
  more?: string;
}

/** What every field is given beside itself: what shows the fields within it comes from above, since it shows this one too. */
export interface FieldState extends FormState {
  Fields: ComponentType<FieldsProps>;
}

/** The id of a field on the page, to which a fault leads. */
export function idOf(path: FieldPath): string {
  return ['field', ...path].join('-');
}

/** The id of the field of a fault. */
export function idOfFault({ path }: FieldFault): string {
  return `field-${path.replaceAll('.', '-')}`;
}

/** Faults of one field itself. `within`: of the parts of it as well, where those have no place of their own. */
export function faultsAt(faults: readonly FieldFault[], path: FieldPath, within = false): FieldFault[] {
  const said = path.join('.');
  return faults.filter((fault) => fault.path === said || (within && fault.path.startsWith(`${said}.`)));
}

/** Fields that name a thing, from which its key is made. */
const NAMES: ReadonlySet<string> = new Set(['name', 'group']);

/**
 * The key that goes with a changed name, as long as nobody has written another.
 *
 * @returns   null when the key is to stay
 */
export function keyAfter(fields: readonly Field[], group: Draft, field: Field, part: Draft | undefined): string | null {
  const key = fields.find(({ kind }) => kind === 'key');
  if (!key || !NAMES.has(field.name)) return null;
  const before: DraftGroup = groupOf(group);
  const isOurs = textOf(before[key.name]) === keyFrom(textOf(before[field.name]));
  return isOurs ? keyFrom(textOf(part)) : null;
}
