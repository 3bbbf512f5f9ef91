import 'server-only';
import type { Facility } from '#core/facility/facility';
import { formatPath, type Path } from '#core/facility/path';
import { ok, type Result, refused } from '#core/result';
import { type FileFormat, parseText } from '#shape/facility/parse-text';
import { readFacility } from '#shape/facility/read-facility';
import type { Refusal } from '../gate/refusal';
import { NOT_KEPT, unkeepable } from './unkeepable';

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
    message: NOT_KEPT,
    ...placeOf(text, format, path),
  }));
  return faults.length === 0 ? ok(read.value) : refused({ why: 'invalid', faults });
}

function placeOf(text: string, format: FileFormat | undefined, path: Path): { line?: number; column?: number } {
  const parsed = parseText(text, format);
  return parsed.ok ? parsed.value.placeOf(path) : {};
}
