import type { Column } from '../plans/credit';
import { type CaseChange, caseChanges } from './difference/case-changes';
import { type FindingChange, findingChanges } from './difference/finding-changes';
import { gravest } from './gravest';
import type { HarmClass, SystemReview, Verdict } from './result';
import { caseTitle } from './words';

/** What a change of a system makes of its review. Plain data: it may cross the wire as it is. */
export interface ReviewDifference {
  /** The worst fault case of each column. */
  worst: Record<Column, { before: WorstSide | null; after: WorstSide | null }>;
  /** Fault cases that are judged otherwise, those that become graver first. */
  cases: CaseChange[];
  /** Findings that come, go, or gain and lose causes; what comes first. */
  findings: FindingChange[];
  /** Fault cases judged on each side. */
  judged: { before: number; after: number };
}

/** The worst fault case on one side of a change. */
export interface WorstSide {
  verdict: Verdict;
  /** Null when no fault case harms anything. */
  case: { id: string; title: string } | null;
  befalls: HarmClass | null;
  /** Least time to spare, s; null when nobody ever comes or nothing is harmed. */
  spareS: number | null;
}

/** What stands on a side where there is no such system. */
const NOTHING: Pick<SystemReview, 'cases' | 'findings'> = { cases: [], findings: [] };

/**
 * What tells one review of a system from another.
 *
 * @param before   the review of the system as it is; null when there is none yet
 * @param after    the review of the system as it would be; null when it would be no more
 * @returns        the difference; without cases and findings when both say the same
 */
export function reviewDifference(before: SystemReview | null, after: SystemReview | null): ReviewDifference {
  const [was, is] = [before ?? NOTHING, after ?? NOTHING];
  const worst = (column: Column) => ({ before: worstOf(before, column), after: worstOf(after, column) });
  return {
    worst: { claimed: worst('claimed'), tested: worst('tested') },
    cases: caseChanges(was.cases, is.cases),
    findings: findingChanges(was.findings, is.findings),
    judged: { before: was.cases.length, after: is.cases.length },
  };
}

/** Whether the reviews on both sides say the same. */
export function isSameReview({ cases, findings }: ReviewDifference): boolean {
  return cases.length === 0 && findings.length === 0;
}

function worstOf(review: SystemReview | null, column: Column): WorstSide | null {
  if (!review) return null;
  const { verdict, outcome, case: found, spareS } = gravest(review, column);
  return {
    verdict,
    case: found && outcome ? { id: found.id, title: caseTitle(found) } : null,
    befalls: outcome?.harm.class ?? null,
    spareS: Number.isFinite(spareS) ? spareS : null,
  };
}
