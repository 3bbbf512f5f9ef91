import { checkReferences } from '#core/facility/check-references';
import type { Facility } from '#core/facility/facility';
import { fieldOf, type Path } from '#core/facility/path';
import { ok, type Result, refused } from '#core/result';
import { facilityShape } from './facility';
import { wordIssues } from './word-issue';

/** One thing that is wrong with a facility that was not read from a file. */
export interface FormFault {
  path: Path;
  /** What is wrong with the field, without its name. */
  message: string;
}

/**
 * Whether a facility in the form of its file is sound: every field by itself, and how it all fits together.
 *
 * @param data   the form of the file
 * @returns      the facility, or everything that is wrong with it
 */
export function checkForm(data: unknown): Result<Facility, FormFault[]> {
  const shaped = facilityShape.safeParse(data);
  if (!shaped.success) return refused(wordIssues(shaped.error.issues, data).map(bare));
  const problems = checkReferences(shaped.data);
  return problems.length === 0 ? ok(shaped.data) : refused(problems.map(bare));
}

/** The same without the name of the field, which a form shows beside it. */
function bare({ path, message }: { path: Path; message: string }): FormFault {
  const name = `${fieldOf(path)} `;
  return { path, message: message.startsWith(name) ? message.slice(name.length) : message };
}
