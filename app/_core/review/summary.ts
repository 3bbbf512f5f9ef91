import type { Column } from '../plans/credit';
import type { Finding, Grade, SystemReview, Verdict } from './result';
import { caseTitle } from './words';

/** Jobs a list shows of each system. */
const JOBS = 3;

/** What a list of systems shows of a review, without its hours and figures. */
export interface ReviewSummary {
  worst: Record<Column, SummaryCase>;
  /** Fault cases judged. */
  cases: number;
  /** How many fault cases have which verdict. */
  verdicts: Record<Column, Partial<Record<Verdict, number>>>;
  /** How many findings have which grade. */
  grades: Record<Grade, number>;
  /** What to do first. */
  jobs: Pick<Finding, 'id' | 'grade' | 'remedy' | 'title'>[];
}

/** The worst fault case of a column. */
export interface SummaryCase {
  verdict: Verdict;
  /** Null when no fault case harms animals. */
  case: { id: string; title: string } | null;
  /** Least time to spare, s; null when nobody ever comes or nothing is harmed. */
  spareS: number | null;
  unsure: boolean;
}

/** The short form of a review. */
export function summaryOf(review: SystemReview): ReviewSummary {
  const grades: Record<Grade, number> = { high: 0, medium: 0, low: 0 };
  for (const { grade } of review.findings) grades[grade] += 1;
  return {
    worst: { claimed: worstIn(review, 'claimed'), tested: worstIn(review, 'tested') },
    cases: review.cases.length,
    verdicts: { claimed: tally(review, 'claimed'), tested: tally(review, 'tested') },
    grades,
    jobs: review.findings.slice(0, JOBS).map(({ id, grade, remedy, title }) => ({ id, grade, remedy, title })),
  };
}

function worstIn(review: SystemReview, column: Column): SummaryCase {
  const { verdict, case: id, spareS } = review.worst[column];
  const found = review.cases.find((c) => c.id === id);
  return {
    verdict,
    case: found ? { id: found.id, title: caseTitle(found) } : null,
    spareS,
    unsure: found?.unsure ?? false,
  };
}

function tally(review: SystemReview, column: Column): Partial<Record<Verdict, number>> {
  const counts: Partial<Record<Verdict, number>> = {};
  for (const c of review.cases) counts[c[column].verdict] = (counts[c[column].verdict] ?? 0) + 1;
  return counts;
}
