import 'server-only';
import type { CaseTrajectory } from '#core/review/trajectory';

/** Courses of fault cases, by id of the case. */
type Courses = Record<string, CaseTrajectory>;

/** Documents whose courses are kept in memory. */
const MOST = 24;
const kept = new Map<string, Courses>();

/**
 * The courses that a document is told by: they follow from the review alone, so whoever looks at it again has them at once.
 *
 * @param review   what the courses depend on: hash of the inputs and how many of its cases
 */
export function coursesOnce(review: string, compute: () => Courses): Courses {
  const courses = kept.get(review) ?? compute();
  kept.delete(review);
  kept.set(review, courses);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return courses;
}
