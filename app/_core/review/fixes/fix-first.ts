import type { Look } from '../combined/look';
import type { Fix, FixFirst } from '../study';
import { caseTitle } from '../words';
import { type Candidate, candidatesOf } from './candidates';
import { type After, changesOf, compareWorth, effectsOf, wins, worth } from './effects';
import { openCases, type Stand, titled } from './stand';
import { testFixes } from './try-tests';
import { tryPeople, type Watched, watch } from './try-people';
import { restated, tryWater } from './try-water';

/** Changes that are proposed together, at most. */
const STEPS = 8;

/** A change with what it makes of the cases it touches. */
interface Tried {
  candidate: Candidate;
  after: After;
  value: number[];
}

/**
 * What to fix first. Every change that can be made is tried alone in the model, on the fault cases it touches; then greedily in
 * combination: the one worth most, then the one worth most on top of it, until nothing more is won. A change of the water is judged
 * on every case before it is taken, so that no side effect is overlooked. On top of others a change is tried again in the order of
 * what it was last worth, and taken once none behind it was ever worth more: one that only wins together with another is not found.
 *
 * @param told called as it goes on, with how many changes are tried and how many there are
 */
export function fixFirst(look: Look, told: (done: number, of: number) => void = () => undefined): FixFirst {
  const stand: Stand = {
    ...look,
    cases: new Map(
      look.tried.map(({ subject, case: c }) => [
        c.id,
        { subject, title: caseTitle(titled(subject)), judgement: c.claimed },
      ]),
    ),
  };
  const candidates = candidatesOf(stand);
  const open = openCases(stand).length;
  const watched = watch(stand, look.on, candidates);
  const tried = candidates.flatMap((candidate, i): Tried[] => {
    told(i, candidates.length + STEPS);
    const one = tryOne(stand, look.on, watched, candidate);
    return one && wins(one.value) ? [one] : [];
  });
  const ranked = tried.sort(byWorth);
  const alone = ranked.map(({ candidate, after }) => fixOf(stand, candidate, after));
  const order = inCombination(look.on, stand, ranked, (step) =>
    told(candidates.length + step, candidates.length + STEPS),
  );
  return { alone: [...alone, ...testFixes(look)], order, open };
}

function byWorth(a: Tried, b: Tried): number {
  return compareWorth(b.value, a.value) || (a.candidate.id < b.candidate.id ? -1 : 1);
}

function tryOne(stand: Stand, on: string, watched: Watched, candidate: Candidate, whole = false): Tried | null {
  const after =
    candidate.remedy.changes === 'people'
      ? tryPeople(stand, on, watched, candidate)
      : tryWater(stand, on, candidate, whole);
  return after && { candidate, after, value: worth(changesOf(stand, after)) };
}

function fixOf(stand: Stand, { id, remedy, place }: Candidate, after: After): Fix {
  const changes = changesOf(stand, after);
  const [won, lost] = [effectsOf(changes, 1), effectsOf(changes, -1)];
  return { id, remedy: remedy.id, column: 'claimed', title: place.title, wins: won, losses: lost };
}

function inCombination(
  on: string,
  from: Stand,
  ranked: readonly Tried[],
  told: (step: number) => void,
): FixFirst['order'] {
  const order: FixFirst['order'] = [];
  let stand = from;
  let left = [...ranked];
  while (order.length < STEPS && left.length > 0 && openCases(stand).length > 0) {
    told(order.length);
    const found = best(on, stand, left);
    left = found.left;
    if (!found.best) break;
    const { candidate, after } = found.best;
    const changes = changesOf(stand, after);
    const next = restated(stand, on, candidate, after);
    const [won, losses] = [effectsOf(changes, 1).length, effectsOf(changes, -1)];
    order.push({ fix: candidate.id, wins: won, left: openCases(next).length, losses });
    stand = next;
  }
  return order;
}

/** How well the worth of a change is known on top of a description: from an earlier one, on what it touches, on every case. */
const EARLIER = 0;
const TOUCHED = 1;
const EVERYWHERE = 2;

/**
 * The change worth most on top of a description, judged on every case; and those that are left to be tried. A change is looked at
 * closer only once none is worth more by what is known so far.
 */
function best(on: string, stand: Stand, ranked: readonly Tried[]): { best: Tried | null; left: Tried[] } {
  const still = ranked.filter(({ candidate }) => isStill(stand, candidate));
  const watched = watch(
    stand,
    on,
    still.map(({ candidate }) => candidate),
  );
  const known = new Map<string, number>();
  let queue = still;
  for (;;) {
    const [first, ...rest] = queue.sort(byWorth);
    if (!first) return { best: null, left: [] };
    const { candidate } = first;
    const level = known.get(candidate.id) ?? EARLIER;
    const isSure = level === EVERYWHERE || (level === TOUCHED && candidate.remedy.changes === 'people');
    if (isSure) return { best: first, left: rest };
    const again = tryOne(stand, on, watched, candidate, level === TOUCHED);
    known.set(candidate.id, level + 1);
    queue = again && wins(again.value) ? [again, ...rest] : rest;
  }
}

/** Whether the place where a change is to be made is still there, and still without it. */
function isStill({ facility, system }: Stand, { remedy, place }: Candidate): boolean {
  return remedy.places(facility, system).some(({ key }) => key === place.key);
}
