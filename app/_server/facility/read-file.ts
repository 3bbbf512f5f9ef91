import 'server-only';
import type { Facility } from '#core/facility/facility';
import { formatPath, type Path } from '#core/facility/path';
import { ok, type Result, refused } from '#core/result';
import { type FileFormat, parseText } from '#shape/facility/parse-text';
import { readFacility } from '#shape/facility/read-facility';
import type { Refusal } from '../gate/refusal';
import { testsAhead } from './tests-ahead';
import { NOT_KEPT, unkeepable } from './unkeepable';

/**
 * Reads a facility file that somebody handed in.
 *
 * @param text     the whole file
 * @param format   how it is written; left out, either is taken
 * @param at       instant it was handed in, which no test of a safeguard may lie ahead of; left out for one whose dates are
 *                 moved afterwards
 * @returns        the facility, or every fault with its path and line
 */
export function readFile(text: string, format?: FileFormat, at?: Date): Result<Facility, Refusal> {
  const read = readFacility(text, { format });
  if (!read.ok) return refused({ why: 'invalid', faults: read.reason });
  const found = [
    ...unkeepable(read.value).map((path) => ({ path, message: NOT_KEPT })),
    ...(at === undefined ? [] : testsAhead(read.value, at)),
  ];
  const faults = found.map(({ path, message }) => ({
    path: formatPath(path),
    message,
    ...placeOf(text, format, path),
  }));
  return faults.length === 0 ? ok(read.value) : refused({ why: 'invalid', faults });
}

function placeOf(text: string, format: FileFormat | undefined, path: Path): { line?: number; column?: number } {
  const parsed = parseText(text, format);
  return parsed.ok ? parsed.value.placeOf(path) : {};
}
