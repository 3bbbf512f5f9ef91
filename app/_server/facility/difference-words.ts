import 'server-only';
import type { Difference } from '#core/facility/difference';
import type { Facility } from '#core/facility/facility';
import type { Custom } from '#core/units/shown';
import { fieldWords, valueWords } from './value-words';

/** What one member of a list is called. */
const ONE_OF: Readonly<Record<string, string>> = {
  rooms: 'room',
  circuits: 'circuit',
  monitors: 'monitor',
  safeguards: 'safeguard',
  people: 'person',
  shifts: 'shift',
  rounds: 'round',
  sheets: 'round sheet',
  lines: 'line',
  profiles: 'tolerance profile',
  systems: 'system',
  tanks: 'tank',
  equipment: 'equipment',
  sensors: 'sensor',
  stock: 'stock',
  alarms: 'alarm',
  states: 'operating state',
};

/**
 * One difference as a line: what it is about, by name, and what becomes of it.
 *
 * @param one      the difference
 * @param before   the facility as it is
 * @param after    the facility as it would be
 * @param custom   units of its figures
 * @returns        for example `Heater 2 (equipment), rated: 150 W → 300 W`
 */
export function differenceWords(one: Difference, before: Facility, after: Facility, custom: Custom = 'metric'): string {
  const { head, fields } = differenceHead(one, before, after);
  const field = fields.at(-1) ?? '';
  switch (one.kind) {
    case 'added':
      return fields.length === 0 ? `${head}: new` : `${head}: new, ${valueWords(one.to, field, custom)}`;
    case 'removed':
      return fields.length === 0
        ? `${head}: no longer there`
        : `${head}: no longer there, was ${valueWords(one.from, field, custom)}`;
    case 'changed':
      return `${head}: ${valueWords(one.from, field, custom)} → ${valueWords(one.to, field, custom)}`;
  }
}

/** What a difference is about, by name, and the fields that lead to it from there. */
export function differenceHead(
  { path }: Pick<Difference, 'path'>,
  before: Facility,
  after: Facility,
): { head: string; fields: string[] } {
  const { about, fields } = subjectOf(path.split('/'), before, after);
  const place = fields.map(fieldWords).join(', ');
  return { head: [about, place].filter((part) => part !== '').join(', '), fields };
}

/** The member of a list that a path leads to or into, and the fields that are left of the path from there. */
function subjectOf(path: readonly string[], before: Facility, after: Facility): { about: string; fields: string[] } {
  const [list = '', key, ...rest] = path;
  if (list === 'site') return { about: '', fields: path.slice(1) };
  const [innerList, innerKey, ...fields] = rest;
  if (list === 'systems' && innerList !== undefined && ONE_OF[innerList] !== undefined && innerKey !== undefined) {
    const scopes = [after, before].map(({ systems }) => systems.find((system) => system.key === key));
    return { about: called(innerList, innerKey, scopes), fields };
  }
  if (ONE_OF[list] === undefined || key === undefined) return { about: '', fields: [...path] };
  return { about: list === 'systems' && rest.length > 0 ? '' : called(list, key, [after, before]), fields: rest };
}

/** A member by its name and what it is. */
function called(list: string, key: string, scopes: readonly (object | undefined)[]): string {
  for (const scope of scopes) {
    const members: unknown = scope && Object.entries(scope).find(([name]) => name === list)?.[1];
    const found = Array.isArray(members) ? members.find((one) => one.key === key || one.name === key) : undefined;
    if (found) return `${found.name ?? found.group ?? key} (${ONE_OF[list]})`;
  }
  return `${key} (${ONE_OF[list]})`;
}
