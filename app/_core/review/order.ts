import type { FaultCase, Judgement } from './result';
import { gravity } from './verdict';

/** Order of fault cases, gravest first: by class of harm, by verdict as claimed, then as tested, then by how near it is. */
export function compareCases(a: FaultCase, b: FaultCase): number {
  return (
    classRank(a) - classRank(b) ||
    gravity(a.claimed.verdict) - gravity(b.claimed.verdict) ||
    gravity(a.tested.verdict) - gravity(b.tested.verdict) ||
    compareNearness(a.claimed, b.claimed) ||
    (a.id < b.id ? -1 : 1)
  );
}

/** Order of two judgements of one verdict: the least time to spare first; with nobody ever coming, the soonest harm. */
export function compareNearness(a: Judgement, b: Judgement): number {
  return difference(leastSpare(a), leastSpare(b)) || difference(soonestHarm(a), soonestHarm(b));
}

/** a − b, also where both are infinite. */
function difference(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

function soonestHarm({ outcomes: [outcome] }: Judgement): number {
  return Math.min(Number.POSITIVE_INFINITY, ...(outcome?.harmS ?? []).filter((s) => s !== null));
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
