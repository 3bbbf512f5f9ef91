import { FACILITY_FORMAT } from '#core/facility/facility';
import type { Path } from '#core/facility/path';
import type { Fault } from './word-issue';

/** What is left of a faulty file when its faulty members are set aside, so that the rest can be checked in the same go. */
export interface ReadablePart {
  data: unknown;
  /** Keys that stand in what was set aside; a reference to one of them is no fault. */
  unread: ReadonlySet<string>;
  /** Where a part of `data` stands in the file. */
  inFile(path: Path): Path;
}

/** Enough of a site and of a system for what is in them to be looked at when they themselves are faulty. */
const SITE = { key: 'site', name: 'Site', zone: 'UTC' };
const SYSTEM = { name: 'System', kind: 'reef', room: 'stand-in', salinity: 'unknown' };

/**
 * @param data   the file as read
 * @param faults what is wrong with its values
 * @returns the file without the smallest members of lists (or unknown fields) that hold the faults
 */
export function readablePart(data: unknown, faults: readonly Fault[]): ReadablePart {
  const aside = new Set(faults.map(({ path, unknown }) => (unknown ? path : memberOf(path)).join('/')));
  const kept = new Map<string, number[]>();
  const unread = new Set<string>([SYSTEM.room]);
  const copy = (value: unknown, path: Path): unknown => {
    if (!isObject(value)) return value;
    const inner = Object.entries(value).filter(([name]) => !setAside([...path, name]));
    if (!Array.isArray(value))
      return Object.fromEntries(inner.map(([name, part]) => [name, copy(part, [...path, name])]));
    kept.set(
      path.join('/'),
      inner.map(([at]) => Number(at)),
    );
    return inner.map(([at, part]) => copy(part, [...path, at]));
  };
  const setAside = (path: Path): boolean => {
    const found = aside.has(path.join('/'));
    if (found) collectKeys(partAt(data, path), unread);
    return found;
  };
  return { data: withStandIns(copy(data, [])), unread, inFile: (path) => inFile(path, kept) };
}

function withStandIns(part: unknown): unknown {
  if (!isObject(part) || Array.isArray(part)) return part;
  const { systems, ...rest } = part as Record<string, unknown>;
  if (!Array.isArray(systems)) return { site: SITE, ...rest, format: FACILITY_FORMAT };
  const whole = systems.map((system, at) => ({ ...SYSTEM, key: `stand-in-${at}`, ...system }));
  return { site: SITE, ...rest, format: FACILITY_FORMAT, systems: whole };
}

/** The member of a list that a path leads through, the field of a system or, failing these, the top field. */
function memberOf(path: Path): Path {
  if (path[0] === 'systems' && path.length > 2) return path.slice(0, typeof path[3] === 'number' ? 4 : 3);
  return typeof path[1] === 'number' ? path.slice(0, 2) : path.slice(0, 1);
}

function inFile(path: Path, kept: ReadonlyMap<string, number[]>): Path {
  const out: (string | number)[] = [];
  for (const step of path) out.push(typeof step === 'number' ? (kept.get(out.join('/'))?.[step] ?? step) : step);
  return out;
}

function collectKeys(value: unknown, into: Set<string>): void {
  if (!isObject(value)) return;
  for (const [name, part] of Object.entries(value)) {
    if (name === 'key' && typeof part === 'string') into.add(part.toLowerCase().replace(/[^a-z0-9]+/g, '-'));
    else if (!Array.isArray(value)) into.add(name);
    collectKeys(part, into);
  }
}

function partAt(data: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, step) => (isObject(value) ? (value as Record<string, unknown>)[step] : undefined),
    data,
  );
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
