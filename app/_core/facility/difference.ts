import type { Facility } from './facility';

/** One difference between two facilities. The path names members of keyed lists by key: `systems/reef-1/equipment/heater-2/ratedW`. */
export interface Difference {
  path: string;
  kind: 'added' | 'removed' | 'changed';
  /** Absent when added. */
  from?: unknown;
  /** Absent when removed. */
  to?: unknown;
}

/**
 * What tells one facility from another, leaf by leaf. A figure is one leaf, and so is a list of plain words (days,
 * people). A whole member of a list that only one side has is listed once. The order of keyed lists means nothing.
 *
 * @param before the facility as it is
 * @param after  the facility as it would be
 * @returns the differences in the order of `before`, then what is new; empty when both describe the same
 */
export function difference(before: Facility, after: Facility): Difference[] {
  return compare('', before, after);
}

function compare(path: string, from: unknown, to: unknown): Difference[] {
  if (from === undefined && to === undefined) return [];
  if (from === undefined) return [{ path, kind: 'added', to }];
  if (to === undefined) return [{ path, kind: 'removed', from }];
  const parts = partsOf(from);
  const others = partsOf(to);
  if (parts && others) {
    const names = new Set([...parts.keys(), ...others.keys()]);
    return [...names].flatMap((name) =>
      compare(path === '' ? name : `${path}/${name}`, parts.get(name), others.get(name)),
    );
  }
  return same(from, to) ? [] : [{ path, kind: 'changed', from, to }];
}

/** Members of a keyed list or fields of an object by name; null for a leaf. */
function partsOf(value: unknown): Map<string, unknown> | null {
  if (!isObject(value)) return null;
  if (!Array.isArray(value)) return 'origin' in value ? null : new Map(Object.entries(value));
  if (value.some((member) => !isObject(member))) return null;
  const names = value.map((member, at) => nameOf(member) ?? String(at));
  return new Map(names.map((name, at) => [names.indexOf(name) === at ? name : `${name}(${at})`, value[at]]));
}

/** What a member of a list is known by: its key, or the one field that tells it from its neighbours. */
function nameOf(member: unknown): string | null {
  if (!isObject(member)) return null;
  const { key, name, state, on } = member as Record<string, unknown>;
  const found = key ?? name ?? state ?? on;
  return typeof found === 'string' ? found : null;
}

function same(a: unknown, b: unknown): boolean {
  if (!isObject(a) || !isObject(b)) return Object.is(a, b);
  const names = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...names].every((name) => same((a as Record<string, unknown>)[name], (b as Record<string, unknown>)[name]));
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
