/**
 * What this room knows: a form as plain data, so that the server can make it and a browser can show it.
 * What it leaves out: which fields a thing has (`_shape/form` reads that off the shapes) and how a field looks (`_ui/form`).
 * Where the numbers come from: the defaults that stand beside a field, with their source.
 */

/** One thing that can be chosen, by the name people know it by. */
export interface Option {
  value: string;
  name: string;
}

/** A unit of the facility file, and how a person of the chosen custom writes it. */
export interface FieldUnit {
  /** The field unit of the shapes, for example `Mm`. */
  is: string;
  /** As it stands beside the field, for example `in`; empty for a plain number. */
  symbol: string;
}

/** The unit of a number: always the same, or that of what another field chooses. */
export type UnitHint = FieldUnit | { by: readonly string[]; of: Readonly<Record<string, FieldUnit>> };

/** That a field is there only for some choices of a neighbour. */
export interface OnlyFor {
  field: string;
  in: readonly string[];
}

/** What is used as long as a field is empty. */
export interface Start {
  /** For which choices of a neighbour it is used; absent: always. */
  for?: OnlyFor;
  /** Ready to read, with its unit. */
  value: string;
  range: string;
  source: string;
  confidence: string;
}

/** What every field has. */
export interface FieldFrame {
  /** As in the facility file. */
  name: string;
  label: string;
  /** What it is, in a sentence; empty where the label says it. */
  about: string;
  /** It may be left empty. */
  optional: boolean;
  only?: OnlyFor;
  /** Stands with the first fields rather than under the fold: always, or for some choices of the deciding field. */
  first: boolean | OnlyFor;
  /** Why it is asked for, where the review asks. */
  asked?: string;
  starts?: readonly Start[];
}

/** What kind of answer a field takes. */
export type FieldKind =
  | { kind: 'text'; long: boolean }
  /** Lower-case letters, digits and hyphens, made from the name until somebody writes one. */
  | { kind: 'key' }
  | { kind: 'date' }
  | { kind: 'time' }
  /** A plain number, or one in a unit; a text with another unit is taken as well. */
  | { kind: 'number'; unit: UnitHint }
  /** A number with where it comes from; `hours`: or one number for each hour of the day. */
  | { kind: 'figure'; unit: FieldUnit; hours: boolean }
  /** One of a set; `isTruth`: the file writes it as true or false. */
  | { kind: 'choice'; options: readonly Option[]; isTruth?: true }
  /** Several of a set; `numbers`: the file writes them as numbers. */
  | { kind: 'choices'; options: readonly Option[]; numbers?: true }
  /** The rota, nobody, or some of these people. */
  | { kind: 'answered-by'; options: readonly Option[] }
  | { kind: 'group'; fields: readonly Field[] }
  | { kind: 'list'; item: readonly Field[]; one: string }
  /** One of several groups, told apart by the field `by`. */
  | { kind: 'one-of'; by: string; of: readonly { value: string; name: string; fields: readonly Field[] }[] };

/** One field of a form. */
export type Field = FieldFrame & FieldKind;

/** What was typed: texts, and the lists and groups they stand in. A part that is absent was not given. */
export type Draft = string | Draft[] | { [name: string]: Draft };

/** The fields of a group, as typed. */
export type DraftGroup = Record<string, Draft>;

/** One thing that is wrong with what was typed. */
export interface FieldFault {
  /** Names and places from the top of the form, joined by dots: `plan.regulation.lowC`; empty for the whole. */
  path: string;
  message: string;
}
