import type { Facility } from '#core/facility/facility';
import type fc from 'fast-check';
import { anyFacility } from './any-facility';

/** Any valid facility, less the characters that no database takes: NUL, and half of a pair. */
export function anyKeepableFacility(): fc.Arbitrary<Facility> {
  return anyFacility().map((given) => keepable(given) as Facility);
}

function keepable(value: unknown): unknown {
  if (typeof value === 'string') return value.replaceAll('\0', 'x').replace(/\p{Surrogate}/gu, 'x');
  if (Array.isArray(value)) return value.map(keepable);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, part]) => [name, keepable(part)]));
}
