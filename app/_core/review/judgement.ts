import type { Column } from '../plans/credit';
import type { Context, View } from './context';
import { disabledBy } from './disabled';
import { type Courses, outcomesOf } from './outcome';
import { repairTime } from './repair';
import type { Judgement } from './result';
import type { Subject } from './trial';
import { UNPROVED } from './unproved';

/** Safeguards that acted in any of the courses; `UNPROVED` among them when a line without a ledger did. */
function actedIn(courses: Courses): string[] {
  return [...new Set(courses.trials.flatMap((t) => [...t.record.acted]))];
}

/** Judge courses in a column. */
export function judgementOf(
  context: Context,
  view: View,
  subject: Subject,
  courses: Courses,
  column: Column,
): Judgement {
  const outcomes = outcomesOf(context, view, subject, courses, column, repairTime(context, view, subject));
  const acted = actedIn(courses).filter((key) => key !== UNPROVED);
  const [gravest] = outcomes;
  if (gravest) return { verdict: gravest.verdict, outcomes, acted };
  const disables = disabledBy(context, subject);
  return disables.length > 0
    ? { verdict: 'dormant', outcomes, acted, disables }
    : { verdict: 'holds', outcomes, acted };
}
