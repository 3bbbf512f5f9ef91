import type { FaultCase, Judgement } from './result';
import { gravity } from './verdict';

/** Order of fault cases, gravest first: by verdict as claimed, then as tested, then by the least time to spare. */
export function compareCases(a: FaultCase, b: FaultCase): number {
  return (
    classRank(a) - classRank(b) ||
    gravity(a.claimed.verdict) - gravity(b.claimed.verdict) ||
    gravity(a.tested.verdict) - gravity(b.tested.verdict) ||
    leastSpare(a.claimed) - leastSpare(b.claimed) ||
    (a.id < b.id ? -1 : 1)
  );
}

function classRank(c: FaultCase): number {
  const cls = c.claimed.outcomes[0]?.harm.class ?? c.tested.outcomes[0]?.harm.class;
  return cls === undefined ? 3 : cls === 'animals' ? 0 : cls === 'floor' ? 1 : 2;
}

/** Least time to spare of the gravest class, s; −Infinity where nobody ever comes, Infinity without harm. */
export function leastSpare(judgement: Judgement): number {
  const [outcome] = judgement.outcomes;
  if (!outcome) return Number.POSITIVE_INFINITY;
  const hours = outcome.harmS.map((s, h) =>
    s === null ? Number.POSITIVE_INFINITY : (outcome.spareS[h] ?? Number.NEGATIVE_INFINITY),
  );
  return Math.min(...hours);
}
