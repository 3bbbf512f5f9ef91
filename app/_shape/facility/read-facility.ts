import { checkReferences } from '#core/facility/check-references';
import type { Facility } from '#core/facility/facility';
import { formatPath, type Path } from '#core/facility/path';
import { ok, type Result, refused } from '#core/result';
import { facilityShape } from './facility';
import type { FileError } from './file-error';
import { type FileFormat, type ParsedText, parseText } from './parse-text';
import { readablePart } from './readable-part';
import { type Fault, wordIssues } from './word-issue';

/**
 * Reads a facility file. All or nothing: a file with any fault gives no facility.
 *
 * @param text   the whole file
 * @param format how it is written; left out, either is taken
 * @returns the facility, or every fault of the file in the order in which they stand in it
 */
export function readFacility(text: string, { format }: { format?: FileFormat } = {}): Result<Facility, FileError[]> {
  const parsed = parseText(text, format);
  if (!parsed.ok) return parsed;
  const shaped = facilityShape.safeParse(parsed.value.data);
  if (shaped.success) {
    const problems = checkReferences(shaped.data);
    return problems.length === 0 ? ok(shaped.data) : refused(placed(problems, parsed.value));
  }
  const faults = wordIssues(shaped.error.issues, parsed.value.data);
  return refused(placed([...faults, ...problemsOfTheRest(parsed.value.data, faults)], parsed.value));
}

/** References within what can be read of a faulty file. What seems absent may stand in the faulty part: not said. */
function problemsOfTheRest(data: unknown, faults: readonly Fault[]): { path: Path; message: string }[] {
  const part = readablePart(data, faults);
  const shaped = facilityShape.safeParse(part.data);
  if (!shaped.success) return [];
  return checkReferences(shaped.data, part.unread)
    .filter(({ about }) => about === 'reference')
    .map(({ path, message }) => ({ path: part.inFile(path), message }));
}

function placed(problems: readonly { path: Path; message: string }[], { placeOf }: ParsedText): FileError[] {
  return problems
    .map(({ path, message }) => ({ path: formatPath(path), ...placeOf(path), message }))
    .sort((a, b) => a.line - b.line || a.column - b.column);
}
