import type { Column } from '../plans/credit';
import type { Context, View } from './context';
import { disabledBy } from './disabled';
import { type Courses, outcomesOf } from './outcome';
import { repairTime } from './repair';
import type { Judgement } from './result';
import type { Subject } from './trial';

/** Judge courses in a column. */
export function judgementOf(
  context: Context,
  view: View,
  subject: Subject,
  courses: Courses,
  column: Column,
): Judgement {
  const outcomes = outcomesOf(context, view, subject, courses, column, repairTime(context, view, subject));
  const acted = [...new Set(courses.trials.flatMap((t) => [...t.record.acted]))];
  const [gravest] = outcomes;
  if (gravest) return { verdict: gravest.verdict, outcomes, acted };
  const dormant = disabledBy(context, subject).length > 0;
  return { verdict: dormant ? 'dormant' : 'holds', outcomes, acted };
}
