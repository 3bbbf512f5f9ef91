import type { Field, FieldFrame, FieldKind, FieldUnit as ShownUnit, Option, UnitHint } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import { z } from 'zod';
import { type FormHint, HINTS, type Referred, type UnitSource } from './hints';
import { onlyFor } from './only-for';
import { shownUnit } from './shown-unit';
import { aboutOf, labelOf, oneOf, optionName } from './words-of';

/** What fields are made for: the person's custom, and what a site or system offers to be chosen. */
export interface FormScope {
  custom: Custom;
  /** Members of a list that can be referred to, by name. */
  choicesOf: (to: Referred, of: string | undefined) => readonly Option[];
  /** Units by what decides them: by key of the sensor, by quantity. */
  unitsBy: (via: UnitSource, difference: boolean) => Readonly<Record<string, ShownUnit>>;
}

/** What a key is, whatever it is the key of. */
const KEY_ABOUT = 'Stands for it in addresses and wherever something refers to it. It stays as it is from then on.';

/** The hours of a day, by the number the file gives them. */
const HOURS: readonly Option[] = Array.from({ length: 24 }, (_, hour) => ({
  value: String(hour),
  name: `${String(hour).padStart(2, '0')}:00`,
}));

/** What may be so or not. */
const YES_OR_NO: readonly Option[] = [
  { value: 'true', name: 'yes' },
  { value: 'false', name: 'no' },
];

type Shape = z.core.$ZodType;
type Kind = FieldKind | null;

/**
 * The fields of a form for a shape, read off the shape itself: what a file may say can be said on screen as well.
 *
 * @param shape   an object of the facility file
 * @param scope   what can be chosen
 * @returns       its fields in the order of the file, none of them first, with no reasons and defaults yet
 */
export function fieldsOf(shape: z.ZodType, scope: FormScope): Field[] {
  const { shape: core } = unwrapped(shape);
  if (!(core instanceof z.ZodObject)) throw new Error('Only an object has fields');
  const noun = String(z.globalRegistry.get(core)?.id ?? '');
  return Object.entries(core.shape).flatMap(([name, part]) => fieldOf(noun, name, part as Shape, scope) ?? []);
}

function fieldOf(noun: string, name: string, shape: Shape, scope: FormScope): Field | null {
  const { shape: core, isOptional, description } = unwrapped(shape);
  const kind = kindOf(name, core, scope);
  if (!kind) return null;
  const label = labelOf(noun, name);
  const only = onlyFor(noun, name);
  const about = kind.kind === 'key' ? KEY_ABOUT : aboutOf(description, label);
  const frame: FieldFrame = { name, label, about, optional: isOptional, first: false };
  return { ...frame, ...(only ? { only } : {}), ...kind };
}

/** What a shape is beneath what may be left out, read in another form, or described again. */
function unwrapped(shape: Shape): { shape: Shape; isOptional: boolean; description: string } {
  let isOptional = false;
  let description = '';
  for (let at = shape; ; ) {
    description ||= z.globalRegistry.get(at)?.description ?? '';
    const hint = HINTS.get(at);
    if (at instanceof z.ZodOptional) {
      isOptional = true;
      at = at.def.innerType;
    } else if (hint === undefined && at instanceof z.ZodCodec) at = at.def.in;
    else return { shape: at, isOptional, description };
  }
}

function kindOf(name: string, shape: Shape, scope: FormScope): Kind {
  const hint = HINTS.get(shape)?.hint;
  if (hint) return hintedKind(hint, scope);
  if (shape instanceof z.ZodObject) return { kind: 'group', fields: fieldsOf(shape, scope) };
  if (shape instanceof z.ZodEnum) return { kind: 'choice', options: shape.options.map(String).map(optionOf) };
  if (shape instanceof z.ZodArray) return listKind(name, shape.def.element, scope);
  if (shape instanceof z.ZodDiscriminatedUnion) return oneOfKind(shape, scope);
  if (shape instanceof z.ZodBoolean) return { kind: 'choice', options: YES_OR_NO, isTruth: true };
  if (shape instanceof z.ZodNumber) return { kind: 'number', unit: { is: 'number', symbol: '' } };
  if (shape instanceof z.ZodString) return { kind: 'text', long: false };
  // What is always the same is nothing to fill in.
  if (shape instanceof z.ZodLiteral) return null;
  throw new Error(`A form has no field for ${shape._zod.def.type}`);
}

function hintedKind(hint: FormHint, { custom, choicesOf, unitsBy }: FormScope): FieldKind {
  switch (hint.as) {
    case 'key':
    case 'date':
    case 'time':
      return { kind: hint.as };
    case 'long-text':
      return { kind: 'text', long: true };
    case 'hours-of-day':
      return { kind: 'choices', options: HOURS, numbers: true };
    case 'answered-by':
      return { kind: 'answered-by', options: choicesOf('person', undefined) };
    case 'reference':
      return { kind: 'choice', options: [...choicesOf(hint.to, hint.of), ...(hint.or ?? []).map(optionOf)] };
    case 'amount':
      return { kind: 'number', unit: shownUnit(hint.unit, custom) };
    case 'figure':
    case 'figure-by-hour':
      return { kind: 'figure', unit: shownUnit(hint.unit, custom), hours: hint.as === 'figure-by-hour' };
    case 'band':
      return { kind: 'group', fields: bandFields(shownUnit(hint.unit, custom)) };
    case 'number-of':
      return { kind: 'number', unit: { by: hint.by, of: unitsBy(hint.via, hint.difference) } };
  }
}

/** The two ends of a band, which the file writes as a pair. */
function bandFields(unit: UnitHint): Field[] {
  const end = (name: string, label: string): Field => ({
    name,
    label,
    about: '',
    optional: false,
    first: true,
    kind: 'number',
    unit,
  });
  return [end('0', 'Lower end'), end('1', 'Upper end')];
}

function listKind(name: string, element: Shape, scope: FormScope): FieldKind {
  const { shape } = unwrapped(element);
  const inner = kindOf(name, shape, scope);
  if (inner?.kind === 'choice') return { kind: 'choices', options: inner.options };
  if (inner?.kind === 'group') return { kind: 'list', item: inner.fields, one: oneOf(name) };
  throw new Error(`A form has no field for the list ${name}`);
}

function oneOfKind(shape: z.ZodDiscriminatedUnion, scope: FormScope): FieldKind {
  const by = shape.def.discriminator;
  const of = shape.options.map((option) => {
    if (!(option instanceof z.ZodObject)) throw new Error(`A form tells apart objects only, by ${by}`);
    const literal: Shape = option.shape[by];
    const value = String((literal as z.ZodLiteral).def.values[0]);
    const said = z.globalRegistry.get(literal)?.description ?? value;
    return { value, name: said.replace(/\.$/, ''), fields: fieldsOf(option, scope) };
  });
  return { kind: 'one-of', by, of };
}

function optionOf(value: string): Option {
  return { value, name: optionName(value) };
}
