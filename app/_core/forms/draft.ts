import type { Draft, DraftGroup, Field, OnlyFor, UnitHint } from './field';

/** Hours of a day, for a figure that is given hour by hour. */
const HOURS = 24;

/** A part of a draft as a group; empty where it is none. */
export function groupOf(draft: Draft | undefined): DraftGroup {
  return typeof draft === 'object' && !Array.isArray(draft) ? draft : {};
}

/** A part of a draft as text; empty where it is none. */
export function textOf(draft: Draft | undefined): string {
  return typeof draft === 'string' ? draft : '';
}

/** A part of a draft as a list; empty where it is none. */
export function listOf(draft: Draft | undefined): Draft[] {
  return Array.isArray(draft) ? draft : [];
}

/** Whether a condition on a neighbour holds in a group. */
export function holds({ field, in: among }: OnlyFor, group: DraftGroup): boolean {
  return among.includes(textOf(group[field]));
}

/** Whether a field is there at all, given what its neighbours say. */
export function isThere({ only }: Field, group: DraftGroup): boolean {
  return only === undefined || holds(only, group);
}

/** Whether a field stands with the first ones: needed, asked for, or named so for what the thing is. */
export function isFirst(field: Field, group: DraftGroup): boolean {
  if (!field.optional || field.asked !== undefined) return true;
  return typeof field.first === 'boolean' ? field.first : holds(field.first, group);
}

/** The unit a number is in: `is` of the facility file, `symbol` as the person writes it. */
export function unitIn(unit: UnitHint, group: DraftGroup): { is: string; symbol: string } {
  if (!('by' in unit)) return unit;
  let part: Draft | undefined = group;
  for (const step of unit.by) part = groupOf(part)[step];
  return unit.of[textOf(part)] ?? { is: 'number', symbol: '' };
}

/** What an empty field holds before anything is typed; undefined for what may be left out. */
export function emptyDraft(field: Field): Draft | undefined {
  switch (field.kind) {
    case 'text':
    case 'key':
    case 'date':
    case 'time':
    case 'number':
    case 'choice':
      return '';
    case 'figure':
      return { value: '', from: '' };
    case 'choices':
      return [];
    case 'list':
      // A list that was not given is not one that has nothing in it.
      return field.optional ? undefined : [];
    case 'answered-by':
      return { by: '', people: [] };
    case 'group':
      return field.optional ? undefined : emptyGroup(field.fields);
    case 'one-of':
      return field.optional ? undefined : {};
  }
}

/** Every field of a group, empty. */
export function emptyGroup(fields: readonly Field[]): DraftGroup {
  const entries = fields.map((field) => [field.name, emptyDraft(field)] as const);
  return Object.fromEntries(entries.filter((entry): entry is [string, Draft] => entry[1] !== undefined));
}

/** Twenty-four empty hours. */
export function emptyHours(value = ''): string[] {
  return new Array<string>(HOURS).fill(value);
}

/**
 * A draft with one part changed; the one given is left as it is.
 *
 * @param path   names and places from the top
 * @param part   what stands there; undefined takes the part out
 */
export function withPart(draft: Draft | undefined, path: readonly (string | number)[], part: Draft | undefined): Draft {
  const [step, ...rest] = path;
  if (step === undefined) return part ?? '';
  if (typeof step === 'number') {
    const list = [...listOf(draft)];
    if (rest.length === 0 && part === undefined) list.splice(step, 1);
    else list[step] = withPart(list[step], rest, part);
    return list;
  }
  const { [step]: inner, ...others } = groupOf(draft);
  if (rest.length === 0 && part === undefined) return others;
  return { ...groupOf(draft), [step]: withPart(inner, rest, part) };
}

/** A key made from a name: `Heater 2 (left)` becomes `heater-2-left`. */
export function keyFrom(name: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  return plain
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 60)
    .replace(/^-+|-+$/g, '');
}

/** Whether two parts say the same; what is absent says the same as what is empty. */
export function isSame(one: Draft | undefined, other: Draft | undefined): boolean {
  if (typeof one !== 'object' || typeof other !== 'object') return (one ?? '') === (other ?? '');
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  if (Array.isArray(one) && Array.isArray(other) && one.length !== other.length) return false;
  const names = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...names].every((name) => isSame((one as DraftGroup)[name], (other as DraftGroup)[name]));
}

/**
 * What was typed, as though the form had been opened only now: what nobody touched is as it has become meanwhile.
 *
 * @param draft   what was typed
 * @param shown   what the form showed when it was opened
 * @param now     what it would show now
 * @returns       the draft and what to compare it with; `clashes` names fields that both sides changed, each otherwise
 */
export function rebased(
  draft: DraftGroup,
  shown: DraftGroup,
  now: DraftGroup,
): { draft: DraftGroup; shown: DraftGroup; clashes: string[] } {
  const result: { draft: DraftGroup; shown: DraftGroup; clashes: string[] } = { draft: {}, shown: {}, clashes: [] };
  for (const name of new Set([...Object.keys(draft), ...Object.keys(shown), ...Object.keys(now)])) {
    const isUntouched = isSame(draft[name], shown[name]);
    const hasChanged = !isSame(shown[name], now[name]);
    const typed = isUntouched ? now[name] : draft[name];
    const before = isUntouched || !hasChanged ? now[name] : undefined;
    if (typed !== undefined) result.draft[name] = typed;
    if (before !== undefined) result.shown[name] = before;
    if (!isUntouched && hasChanged && !isSame(draft[name], now[name])) result.clashes.push(name);
  }
  return result;
}
