import 'server-only';
import { resolveSystem } from '#core/equipment/resolve';
import type { InputNote } from '#core/equipment/take';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Field, OnlyFor } from '#core/forms/field';
import type { Custom } from '#core/units/shown';
import type { ThingNoun } from '#shape/describe/edit';
import { type Asked, withAsked } from './asked';
import firstFields from './first-fields.json';
import { withStarts } from './starts';
import { THING_KINDS } from './things';

/** Whose form it is, and what the review asks for. */
export interface Dressing {
  facility: Facility;
  noun: ThingNoun;
  system: System | null;
  /** Left out for a new thing. */
  key?: string;
  asked: Asked;
  custom: Custom;
}

const FIRST = firstFields as Partial<Record<ThingNoun, Record<string, true | OnlyFor>>>;

/** The fields of a thing with what a person needs beside them: which come first, why they are asked for, what is used till then. */
export function dressed(fields: readonly Field[], { facility, noun, system, key, asked, custom }: Dressing): Field[] {
  const at = pathOf(noun, system, key);
  const firsts = fields.map((field) => ({ ...field, first: FIRST[noun]?.[field.name] ?? field.first }));
  const started = withStarts(firsts, noun, key === undefined ? new Map() : notesOf(facility, system, at), custom);
  return key === undefined ? started : withAsked(started, asked, at);
}

/** Where a thing stands in the paths of a review, ending in a slash. */
function pathOf(noun: ThingNoun, system: Pick<System, 'key'> | null, key = ''): string {
  if (noun === 'site') return 'site/';
  const { siteList, systemList } = THING_KINDS[noun];
  if (noun === 'system') return `systems/${key}/`;
  return system ? `systems/${system.key}/${systemList}/${key}/` : `${siteList}/${key}/`;
}

/** What the model fills in for a thing, by field. What it would take for granted without a range is not noted. */
function notesOf(facility: Facility, system: System | null, at: string): Map<string, InputNote> {
  const notes = system ? resolveSystem(facility, system, 'nominal').notes : [];
  return new Map(
    notes.flatMap((note) => (note.path.startsWith(at) ? [[note.path.slice(at.length), note] as const] : [])),
  );
}
