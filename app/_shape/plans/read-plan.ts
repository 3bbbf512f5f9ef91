import { formatPath } from '#core/facility/path';
import type { Plan } from '#core/plans/plan';
import { ok, type Result, refused } from '#core/result';
import { parseText } from '../facility/parse-text';
import { planShape } from '../facility/plan';
import { wordIssues } from '../facility/word-issue';

/** One thing that is wrong with a plan, by the field it stands in. */
export interface PlanFault {
  path: string;
  message: string;
}

/**
 * Reads a plan as the facility file writes it. Whether what it refers to is there is not asked here.
 *
 * @param text   JSON
 * @returns      the plan, or every fault of it
 */
export function readPlan(text: string): Result<Plan, PlanFault[]> {
  const parsed = parseText(text, 'json');
  if (!parsed.ok) return parsed;
  const shaped = planShape.safeParse(parsed.value.data);
  if (shaped.success) return ok(shaped.data);
  const faults = wordIssues(shaped.error.issues, parsed.value.data);
  return refused(faults.map(({ path, message }) => ({ path: formatPath(path), message })));
}
