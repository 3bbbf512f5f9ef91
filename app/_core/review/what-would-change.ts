import type { Column } from '../plans/credit';
import { narrowing } from './ask-next';
import type { FaultCase, OpenInput, Outcome, SystemReview, Verdict } from './result';
import type { Combination, Effect, Study } from './study';
import { gravity } from './verdict';

/** What would change the verdict of one fault case. */
export interface WouldChange {
  /** Hours of the week at which the fault leaves nothing to spare, of those at which it harms; null without harm as claimed. */
  hours: { bare: number; harmful: number } | null;
  /** Keys of the safeguards that acted as claimed and do not as tested, where that changes the verdict. */
  untested: string[];
  tested: Verdict;
  /** Changes of the system that make it less grave, most won first, each in the column in which it does. */
  fixes: { title: string; column: Column; effect: Effect }[];
  /** Safeguards whose loss makes it graver, gravest first. */
  dead: { name: string; verdict: Verdict }[];
  /** The one figure that would narrow it most; null when none changes it alone, or nobody asked. */
  figure: OpenInput | null;
  /** Whether it was asked figure by figure. */
  isAsked: boolean;
}

/**
 * What would change the verdict of a fault case: the hour at which it begins, a test, a change of the system, the loss of a
 * safeguard, a figure. Nothing is simulated: it is read off the review and the longer look.
 *
 * @param study null where there is none yet
 */
export function whatWouldChange(review: SystemReview, study: Study | null, c: FaultCase): WouldChange {
  const [outcome] = c.claimed.outcomes;
  const differs = c.claimed.verdict !== c.tested.verdict;
  return {
    hours: outcome ? hoursOf(outcome) : null,
    untested: differs ? c.claimed.acted.filter((key) => !c.tested.acted.includes(key)) : [],
    tested: c.tested.verdict,
    fixes: study ? fixesOf(study, c) : [],
    dead: study ? deadOf(study, c) : [],
    figure: narrowing(review.inputs, c.id),
    isAsked: review.askedOf?.includes(c.id) ?? false,
  };
}

function hoursOf({ harmS, spareS }: Outcome): { bare: number; harmful: number } {
  const harmful = harmS.flatMap((s, h) => (s === null ? [] : [h]));
  return { bare: harmful.filter((h) => (spareS[h] ?? Number.NEGATIVE_INFINITY) <= 0).length, harmful: harmful.length };
}

function fixesOf({ fixFirst }: Study, c: FaultCase): WouldChange['fixes'] {
  const found = fixFirst.alone.flatMap(({ title, column, wins }) =>
    wins.filter((effect) => effect.case === c.id).map((effect) => ({ title, column, effect })),
  );
  const gain = ({ effect }: (typeof found)[number]) => effect.gainS ?? Number.POSITIVE_INFINITY;
  return found.sort((a, b) => gravity(b.effect.to) - gravity(a.effect.to) || gain(b) - gain(a));
}

function deadOf({ combinations }: Study, c: FaultCase): WouldChange['dead'] {
  return combinations
    .filter((one) => one.kind === 'safeguard-dead' && isOf(one, c) && gravity(one.verdict) < gravity(c.claimed.verdict))
    .flatMap(({ parts, verdict }) =>
      parts.flatMap((part) => (part.kind === 'safeguard' ? [{ name: part.name, verdict }] : [])),
    )
    .sort((a, b) => gravity(a.verdict) - gravity(b.verdict));
}

function isOf({ parts, state }: Combination, c: FaultCase): boolean {
  return (
    state === c.state &&
    parts.some((part) => part.kind === 'fault' && part.fault === c.fault && part.thing.key === c.thing.key)
  );
}
