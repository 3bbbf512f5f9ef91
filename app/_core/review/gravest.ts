import type { Column } from '../plans/credit';
import { leastSpare } from './order';
import type { FaultCase, HarmClass, Judgement, Outcome, SystemReview, Verdict } from './result';
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
  const none: Gravest = { ...NOTHING, case: null };
  return cases
    .map((c): Gravest => ({ ...gravestOutcome(c[column]), case: c }))
    .reduce((worst, one) => (isGraver(one, worst) ? one : worst), none);
}

const NOTHING: Omit<Gravest, 'case'> = {
  verdict: 'holds',
  outcome: null,
  rank: NOT_GRAVE + gravity('holds'),
  spareS: Number.POSITIVE_INFINITY,
};

/** The gravest outcome of one judgement; where nothing is harmed, its verdict alone. */
export function gravestOutcome({ verdict, outcomes }: Judgement): Omit<Gravest, 'case'> {
  if (outcomes.length === 0) {
    const rank = (verdict === 'not-assessed' ? 0 : NOT_GRAVE) + gravity(verdict);
    return { ...NOTHING, verdict, rank };
  }
  return outcomes.map(ranked).reduce((worst, one) => (isGraver(one, worst) ? one : worst));
}

/** Place among others, lower is graver: by rank, and of one rank by whom it befalls, animals before floor before pump. */
export function placeOf({ rank, outcome }: Pick<Gravest, 'rank' | 'outcome'>): number {
  return rank + (outcome ? CLASSES.indexOf(outcome.harm.class) / 10 : 0);
}

/** Order of two: by place; of one place the least to spare first, to the second: less is rounding. */
export function compareGravest(a: Omit<Gravest, 'case'>, b: Omit<Gravest, 'case'>): number {
  const [one, other] = [Math.round(a.spareS), Math.round(b.spareS)];
  return placeOf(a) - placeOf(b) || (one === other ? 0 : one - other);
}

/** Whether one lies before another, strictly. */
function isGraver(one: Omit<Gravest, 'case'>, other: Omit<Gravest, 'case'>): boolean {
  return compareGravest(one, other) < 0;
}

function ranked(outcome: Outcome): Omit<Gravest, 'case'> {
  const isGrave = gravity(outcome.verdict) <= gravity('some-hours');
  const rank = (isGrave ? 10 * CLASSES.indexOf(outcome.harm.class) : NOT_GRAVE) + gravity(outcome.verdict);
  const spareS = leastSpare({ verdict: outcome.verdict, outcomes: [outcome], acted: [] });
  return { verdict: outcome.verdict, outcome, rank, spareS };
}
