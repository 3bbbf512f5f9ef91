import 'server-only';
import type { Facility } from '#core/facility/facility';
import { formatPath, type Path } from '#core/facility/path';
import { ok, type Result, refused } from '#core/result';
import { type FileFormat, parseText } from '#shape/facility/parse-text';
import { readFacility } from '#shape/facility/read-facility';
import type { Refusal } from '../gate/refusal';

/**
 * Reads a facility file that somebody handed in.
 *
 * @param text     the whole file
 * @param format   how it is written; left out, either is taken
 * @returns        the facility, or every fault with its path and line
 */
export function readFile(text: string, format?: FileFormat): Result<Facility, Refusal> {
  const read = readFacility(text, { format });
  if (!read.ok) return refused({ why: 'invalid', faults: read.reason });
  const faults = unkeepable(read.value).map((path) => ({
    path: formatPath(path),
    message: 'holds a character that cannot be kept: NUL, or one half of a pair',
    ...placeOf(text, format, path),
  }));
  return faults.length === 0 ? ok(read.value) : refused({ why: 'invalid', faults });
}

const HALF_A_PAIR = /\p{Surrogate}/u;

/** Texts that PostgreSQL does not take: it would refuse them, or give something else back. */
function unkeepable(value: unknown, path: Path = []): Path[] {
  if (typeof value === 'string') return value.includes('\0') || HALF_A_PAIR.test(value) ? [path] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, part]) =>
    unkeepable(part, [...path, Array.isArray(value) ? Number(name) : name]),
  );
}

function placeOf(text: string, format: FileFormat | undefined, path: Path): { line?: number; column?: number } {
  const parsed = parseText(text, format);
  return parsed.ok ? parsed.value.placeOf(path) : {};
}
