import { CLASSES } from '../outcome';
import type { Harm, Verdict } from '../result';
import type { StateName } from '../../facility/system';
import { gravestOutcome } from '../gravest';
import type { Combination, MinimalSet, Part } from '../study';
import { gravity } from '../verdict';
import { faultPart, partId } from './combination';
import { frequencyOf } from './frequency';
import type { Look } from './look';
import { isSubset } from './sets';

/** The mildest verdict that counts as harm before anybody could put it right: at some hours it is so. */
export const CUT: Verdict = 'some-hours';

/** What can go wrong together, with what it comes to. */
interface Candidate {
  parts: Part[];
  state: StateName;
  verdict: Verdict;
  harm: Harm | null;
  spareS: number | null;
  perYear: number | null;
}

/**
 * Smallest sets of things wrong that lead to harm before anybody could put it right. Single faults, and all combinations that
 * were tried; no set holds a smaller one that does harm at least as grave, in the same state or in normal running.
 */
export function minimalSets(look: Look, combinations: readonly Combination[]): MinimalSet[] {
  const singles = look.tried.map(({ subject, case: c }): Candidate => {
    const { verdict, outcome, spareS } = gravestOutcome(c.claimed);
    const parts = [faultPart(subject)];
    return {
      parts,
      state: c.state,
      verdict,
      harm: outcome?.harm ?? null,
      spareS: Number.isFinite(spareS) ? spareS : null,
      perYear: frequencyOf(look, parts),
    };
  });
  return smallest([...singles, ...combinations]);
}

/** The candidates that count and hold no smaller one, the gravest first. */
export function smallest(candidates: readonly Candidate[]): MinimalSet[] {
  const sets = candidates.flatMap(({ parts, state, verdict, harm, spareS, perYear }) =>
    harm && gravity(verdict) <= gravity(CUT)
      ? [{ ids: [...new Set(parts.map(partId))], set: { parts, state, verdict, harm, spareS, perYear } }]
      : [],
  );
  sets.sort((a, b) => a.ids.length - b.ids.length || inState(a.set) - inState(b.set) || compare(a.set, b.set));
  const kept: typeof sets = [];
  for (const one of sets) if (!kept.some((smaller) => stands(smaller, one))) kept.push(one);
  return kept.map(({ set }) => set).sort(compare);
}

/** Whether one set makes another one superfluous. */
function stands(a: { ids: string[]; set: MinimalSet }, b: { ids: string[]; set: MinimalSet }): boolean {
  const isThere = a.set.state === 'normal' || a.set.state === b.set.state;
  return isThere && rank(a.set) <= rank(b.set) && isSubset(a.ids, b.ids);
}

function inState({ state }: MinimalSet): number {
  return state === 'normal' ? 0 : 1;
}

function rank({ harm }: MinimalSet): number {
  return CLASSES.indexOf(harm.class);
}

/** By whom it harms, how surely, and how little time there is; among equals the fewer things wrong first. */
function compare(a: MinimalSet, b: MinimalSet): number {
  const spare = (one: MinimalSet) => one.spareS ?? Number.NEGATIVE_INFINITY;
  return (
    rank(a) - rank(b) ||
    gravity(a.verdict) - gravity(b.verdict) ||
    (spare(a) === spare(b) ? 0 : spare(a) - spare(b)) ||
    a.parts.length - b.parts.length ||
    (a.parts.map(partId).join() < b.parts.map(partId).join() ? -1 : 1)
  );
}
