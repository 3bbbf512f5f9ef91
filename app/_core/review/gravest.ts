import type { Column } from '../plans/credit';
import { leastSpare } from './order';
import type { FaultCase, HarmClass, Outcome, SystemReview, Verdict } from './result';
import { gravity } from './verdict';

/** The gravest thing that the fault cases of a system come to in one column. */
export interface Gravest {
  verdict: Verdict;
  /** Null where nothing is harmed. */
  outcome: Outcome | null;
  /** Null where there is no fault case at all. */
  case: FaultCase | null;
  /** Lower is graver: what is grave for the animals, then for the floor, then for the pump, then what is not grave. */
  rank: number;
  /** Least time to spare, s; −Infinity where nobody ever comes, Infinity where nothing is harmed. */
  spareS: number;
}

const CLASSES: readonly HarmClass[] = ['animals', 'floor', 'equipment'];
/** Rank from which nothing has to be done. */
const NOT_GRAVE = 100;

/**
 * The gravest outcome of all fault cases: losing animals before water on the floor before a dry pump, whatever the
 * verdicts; among equals the one with the least time to spare.
 */
export function gravest({ cases }: Pick<SystemReview, 'cases'>, column: Column): Gravest {
  const none: Gravest = {
    verdict: 'holds',
    outcome: null,
    case: null,
    rank: NOT_GRAVE + gravity('holds'),
    spareS: Number.POSITIVE_INFINITY,
  };
  return cases
    .flatMap((c) => ranked(c, column))
    .reduce((worst, one) => ((one.rank - worst.rank || one.spareS - worst.spareS) < 0 ? one : worst), none);
}

function ranked(c: FaultCase, column: Column): Gravest[] {
  const { verdict, outcomes } = c[column];
  if (outcomes.length === 0) {
    const rank = (verdict === 'not-assessed' ? 0 : NOT_GRAVE) + gravity(verdict);
    return [{ verdict, outcome: null, case: c, rank, spareS: Number.POSITIVE_INFINITY }];
  }
  return outcomes.map((outcome) => {
    const isGrave = gravity(outcome.verdict) <= gravity('some-hours');
    const rank = (isGrave ? 10 * CLASSES.indexOf(outcome.harm.class) : NOT_GRAVE) + gravity(outcome.verdict);
    const spareS = leastSpare({ verdict: outcome.verdict, outcomes: [outcome], acted: [] });
    return { verdict: outcome.verdict, outcome, case: c, rank, spareS };
  });
}
