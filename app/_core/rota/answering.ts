import type { AnsweredBy } from '../facility/site';

/** A stretch of somebody's duty on a line of time: s from the line's beginning, its end not counted. */
export interface Stretch {
  fromS: number;
  toS: number;
  kind: 'on-site' | 'on-call';
  /** Key of the person. */
  person: string;
  /** s from being called to having understood and, from home, to leaving. */
  answerS: number;
  /** s of the way to the site; 0 on site. */
  travelS: number;
}

/** Somebody who answers at any hour when an alarm names them, from home. */
export interface Home {
  person: string;
  answerS: number;
  travelS: number;
}

/** Who comes, and how soon. `waitS`: until their duty begins; 0 when they are on, or answer from home at any hour. */
export interface Come {
  person: string;
  kind: Stretch['kind'] | 'from-home';
  waitS: number;
  answerS: number;
  travelS: number;
}

/** Who stands before the equipment first when called at a moment, s from the line's beginning; null: nobody ever comes. */
export type Answering = (atS: number) => Come | null;

/** A stretch between two changes of who is on. */
interface Step {
  fromS: number;
  /** The quickest of those who are on. */
  on: Stretch | null;
  /** Of those who begin later, the one who is there first. */
  next: Stretch | null;
}

/**
 * Who comes first on a line of duties, for many calls: what changes with the time is worked out once. Whoever is on is called at
 * once; for whoever is not, the message waits until their duty begins. People who are named answer at any hour from home.
 *
 * @param stretches   duties; those that begin long after the last call can be left out
 * @param homes       everybody's answer from home
 * @param able        whether somebody can do what has to be done
 */
export function answering(
  stretches: readonly Stretch[],
  homes: readonly Home[],
  answeredBy: AnsweredBy,
  able: (person: string) => boolean = () => true,
): Answering {
  if (answeredBy === 'nobody') return () => null;
  const asked = (person: string) => (answeredBy === 'rota' || answeredBy.includes(person)) && able(person);
  const steps = stepsOf(stretches.filter(({ person }) => asked(person)));
  const home = answeredBy === 'rota' ? null : quickest(homes.filter(({ person }) => asked(person)));
  return (atS) => {
    const { on, next } = steps[stepAt(steps, atS)] ?? NOBODY;
    // It is asked hundreds of thousands of times: nothing is made but the answer.
    const homeS = home ? home.answerS + home.travelS : Number.POSITIVE_INFINITY;
    const onS = on ? on.answerS + on.travelS : Number.POSITIVE_INFINITY;
    const nextS = next ? thereAt(next) - atS : Number.POSITIVE_INFINITY;
    if (home && homeS <= onS && homeS <= nextS) return { ...home, kind: 'from-home', waitS: 0 };
    if (on && onS <= nextS) return come(on, 0);
    return next ? come(next, next.fromS - atS) : null;
  };
}

/** s from the call to standing there. */
export function comesAfter({ waitS, answerS, travelS }: Come): number {
  return waitS + answerS + travelS;
}

function come({ person, kind, answerS, travelS }: Stretch, waitS: number): Come {
  return { person, kind, waitS, answerS, travelS };
}

function quickest<T extends Home>(all: readonly T[]): T | null {
  let best: T | null = null;
  for (const one of all) if (best === null || one.answerS + one.travelS < best.answerS + best.travelS) best = one;
  return best;
}

const NOBODY: Step = { fromS: Number.NEGATIVE_INFINITY, on: null, next: null };

function stepsOf(stretches: readonly Stretch[]): Step[] {
  const changes = stretches.flatMap(({ fromS, toS }) => [fromS, toS]);
  const edges = [...new Set([Number.NEGATIVE_INFINITY, ...changes])].sort((a, b) => a - b);
  const begins = [...stretches].sort((a, b) => a.fromS - b.fromS);
  const steps: Step[] = [];
  let next: Stretch | null = null;
  let later = begins.length - 1;
  for (const fromS of edges.reverse()) {
    // From the last change to the first: what begins after this one joins those who come later.
    for (let one = begins[later]; one && one.fromS > fromS; one = begins[--later])
      if (next === null || thereAt(one) <= thereAt(next)) next = one;
    steps.push({ fromS, on: quickest(stretches.filter((one) => one.fromS <= fromS && fromS < one.toS)), next });
  }
  return steps.reverse();
}

function thereAt({ fromS, answerS, travelS }: Stretch): number {
  return fromS + answerS + travelS;
}

/** Index of the last step that has begun; the first has begun ever since. */
function stepAt(steps: readonly Step[], atS: number): number {
  let [low, high] = [0, steps.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((steps[middle]?.fromS ?? 0) <= atS) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
