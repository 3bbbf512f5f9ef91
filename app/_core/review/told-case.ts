import { pressingIn } from './findings';
import type { FaultCase, HarmClass, Judgement } from './result';

/**
 * A fault case as the findings speak of it: led by the harm that calls most urgently for something to be done. Animals that
 * can be saved in time do not hide a floor that is flooded.
 *
 * @returns the case, with the outcomes of that class first in both columns and their verdicts as its own; unchanged where
 *   nothing is urgent as claimed
 */
export function toldCase(c: FaultCase): FaultCase {
  const cls = pressingIn(c)?.harm.class;
  if (cls === undefined || cls === c.claimed.outcomes[0]?.harm.class) return c;
  return { ...c, claimed: ledBy(c.claimed, cls), tested: ledBy(c.tested, cls) };
}

function ledBy(judgement: Judgement, cls: HarmClass): Judgement {
  const first = judgement.outcomes.filter(({ harm }) => harm.class === cls);
  const [lead] = first;
  if (!lead) return judgement;
  const rest = judgement.outcomes.filter(({ harm }) => harm.class !== cls);
  return { ...judgement, verdict: lead.verdict, outcomes: [...first, ...rest] };
}
