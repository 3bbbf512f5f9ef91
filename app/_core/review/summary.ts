import type { Column } from '../plans/credit';
import { gravest, placeOf } from './gravest';
import type { Finding, Grade, Harm, SystemReview, Verdict } from './result';
import { type SpareHour, spareHours } from './tonight';
import { caseTitle, worstHour } from './words';

/** Jobs a list shows of each system. */
const JOBS = 3;

/** What a list of systems shows of a review, without its hours and figures. */
export interface ReviewSummary {
  worst: Record<Column, SummaryCase>;
  /** Time to spare of the worst case, as claimed, by the hour of the week; absent where nothing is harmed. */
  spareHours?: SpareHour[];
  /** Fault cases judged. */
  cases: number;
  /** How many fault cases have which verdict. */
  verdicts: Record<Column, Partial<Record<Verdict, number>>>;
  /** How many findings have which grade. */
  grades: Record<Grade, number>;
  /** What to do first. */
  jobs: Pick<Finding, 'id' | 'grade' | 'remedy' | 'title'>[];
}

/** The worst fault case of a column: losing animals before water on the floor before a dry pump. */
export interface SummaryCase {
  verdict: Verdict;
  /** Null when no fault case harms anything. */
  case: { id: string; title: string } | null;
  /** What it does first, and how long after it begins at its worst hour, s; null when nothing is harmed. */
  harm: (Harm & { afterS: number }) | null;
  /** Least time to spare, s; null when nobody ever comes or nothing is harmed. */
  spareS: number | null;
  unsure: boolean;
  /** Order among systems: lower is graver. */
  rank: number;
}

/** The short form of a review. */
export function summaryOf(review: SystemReview): ReviewSummary {
  const grades: Record<Grade, number> = { high: 0, medium: 0, low: 0 };
  for (const { grade } of review.findings) grades[grade] += 1;
  const { outcome } = gravest(review, 'claimed');
  return {
    ...(outcome && { spareHours: spareHours(outcome) }),
    worst: { claimed: worstIn(review, 'claimed'), tested: worstIn(review, 'tested') },
    cases: review.cases.length,
    verdicts: { claimed: tally(review, 'claimed'), tested: tally(review, 'tested') },
    grades,
    jobs: review.findings.slice(0, JOBS).map(({ id, grade, remedy, title }) => ({ id, grade, remedy, title })),
  };
}

function worstIn(review: SystemReview, column: Column): SummaryCase {
  const worst = gravest(review, column);
  const { verdict, outcome, case: found, spareS } = worst;
  return {
    verdict,
    case: found && outcome ? { id: found.id, title: caseTitle(found) } : null,
    harm: outcome && { ...outcome.harm, afterS: outcome.harmS[worstHour(outcome)] ?? outcome.harm.atS },
    spareS: Number.isFinite(spareS) ? spareS : null,
    unsure: found?.unsure ?? false,
    rank: placeOf(worst),
  };
}

function tally(review: SystemReview, column: Column): Partial<Record<Verdict, number>> {
  const counts: Partial<Record<Verdict, number>> = {};
  for (const c of review.cases) counts[c[column].verdict] = (counts[c[column].verdict] ?? 0) + 1;
  return counts;
}
