import { z } from 'zod';
import type { FieldUnit } from '../facility/field-unit';

/** Lists of a facility whose members are referred to by key. */
export type Referred =
  | 'room'
  | 'circuit'
  | 'gateway'
  | 'person'
  | 'system'
  | 'profile'
  | 'tank'
  | 'equipment'
  | 'sensor'
  | 'safeguard'
  | 'competence';

/** What decides the unit of a number: which sensor, what a probe of its own measures, what a limit is set on. */
export type UnitSource = 'sensor' | 'probe' | 'limit';

/** What a form must know of a field beyond its shape. */
export type FormHint =
  | { as: 'key' | 'long-text' | 'date' | 'time' | 'answered-by' | 'hours-of-day' }
  /** Key of a member; `of`: only those of this kind or quantity; `or`: words that stand for something else. */
  | { as: 'reference'; to: Referred; of?: string; or?: readonly string[] }
  | { as: 'amount' | 'figure' | 'figure-by-hour'; unit: FieldUnit }
  | { as: 'band'; unit: FieldUnit }
  /** A number in the unit that a neighbour decides; or in differences of it. */
  | { as: 'number-of'; by: readonly string[]; via: UnitSource; difference: boolean };

/** Hints by shape. A shape that is described or refined further keeps the hint of the one it was made from. */
export const HINTS = z.registry<{ hint: FormHint }>();

/** Says what a form must know of a shape. @returns the shape itself */
export function hinted<S extends z.ZodType>(shape: S, hint: FormHint): S {
  HINTS.add(shape, { hint });
  return shape;
}
