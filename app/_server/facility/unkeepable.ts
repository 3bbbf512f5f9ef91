import 'server-only';
import type { Path } from '#core/facility/path';

/** What is wrong with a text that PostgreSQL does not take. */
export const NOT_KEPT = 'holds a character that cannot be kept: NUL, or one half of a pair';
const HALF_A_PAIR = /\p{Surrogate}/u;

/** Where in a value texts stand that PostgreSQL does not take: it would refuse them, or give something else back. */
export function unkeepable(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'string') return value.includes('\0') || HALF_A_PAIR.test(value) ? [path] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) =>
    unkeepable(part, [...path, Array.isArray(value) ? Number(name) : name]),
  );
}
