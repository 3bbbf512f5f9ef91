import { gravestOutcome } from '../gravest';
import { CLASSES } from '../outcome';
import type { Judgement } from '../result';
import type { Effect } from '../study';
import { isOpen, type Judged, type Stand } from './stand';

/** What a change makes of some fault cases, by id. */
export type After = Map<string, Judged>;

/** A new thing is compared with there being none: nothing is harmed by what is not there. */
const ABSENT: Judgement = { verdict: 'holds', outcomes: [], acted: [] };

/** One fault case before and after. */
interface Change {
  before: Judgement;
  after: Judgement;
  effect: Effect;
}

/** Fault cases that come out otherwise, in both directions. */
export function changesOf({ cases }: Pick<Stand, 'cases'>, after: After): Change[] {
  return [...after].flatMap(([id, { judgement, title }]): Change[] => {
    const before = cases.get(id)?.judgement ?? ABSENT;
    const [a, b] = [gravestOutcome(before), gravestOutcome(judgement)];
    if (a.rank === b.rank) return [];
    const gainS = Number.isFinite(a.spareS) && Number.isFinite(b.spareS) ? b.spareS - a.spareS : null;
    const befalls = { from: a.outcome?.harm.class ?? null, to: b.outcome?.harm.class ?? null };
    return [{ before, after: judgement, effect: { case: id, title, from: a.verdict, to: b.verdict, befalls, gainS } }];
  });
}

/** Effects that make a case less grave, most won first; or graver, most lost first. */
export function effectsOf(changes: readonly Change[], sign: 1 | -1): Effect[] {
  const step = ({ before, after }: Change) => gravestOutcome(after).rank - gravestOutcome(before).rank;
  return changes
    .filter((change) => sign * step(change) > 0)
    .sort((a, b) => sign * (step(b) - step(a)) || (a.effect.case < b.effect.case ? -1 : 1))
    .map(({ effect }) => effect);
}

/**
 * What a change is worth, in the order in which it counts: cases of animals that are no longer open less those that become so, then
 * of the floor, then of equipment; then open cases that become less grave less those that become graver; then seconds of time to
 * spare. What was covered before and holds after is told as won, but is worth nothing.
 */
export function worth(changes: readonly Change[]): number[] {
  const closed = CLASSES.map((cls) =>
    changes.reduce((sum, { before, after }) => {
      const [was, is] = [isOpen(before) && classOf(before) === cls, isOpen(after) && classOf(after) === cls];
      return sum + Number(was) - Number(is);
    }, 0),
  );
  const steps = changes.map(({ before, after }) => Math.sign(gravestOutcome(after).rank - gravestOutcome(before).rank));
  const gained = changes.reduce((sum, { effect }) => sum + (effect.gainS ?? 0), 0);
  return [...closed, steps.reduce((sum: number, step) => sum + step, 0), gained];
}

/** Above 0 when the first is worth more. */
export function compareWorth(a: readonly number[], b: readonly number[]): number {
  for (const [i, value] of a.entries()) if (value !== b[i]) return value - (b[i] ?? 0);
  return 0;
}

/** Whether a change is worth anything: at the first place where it makes a difference it wins. */
export function wins(value: readonly number[]): boolean {
  return (
    compareWorth(
      value.slice(0, -1),
      value.slice(0, -1).map(() => 0),
    ) > 0
  );
}

function classOf(judgement: Judgement) {
  return gravestOutcome(judgement).outcome?.harm.class;
}
