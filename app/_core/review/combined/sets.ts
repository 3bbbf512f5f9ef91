/** A fault tree: an event by its name, or events joined. `or: []` never happens, `and: []` always does. */
export type Tree = string | { and: readonly Tree[] } | { or: readonly Tree[] } | { not: Tree } | AtLeast;

/** So many of these at least. */
interface AtLeast {
  atLeast: number;
  of: readonly Tree[];
}

type Truth = boolean | undefined;

/** Events of a tree, each once, in the order in which they first stand in it. */
export function eventsOf(tree: Tree): string[] {
  if (typeof tree === 'string') return [tree];
  const parts = 'not' in tree ? [tree.not] : 'and' in tree ? tree.and : 'or' in tree ? tree.or : tree.of;
  return [...new Set(parts.flatMap(eventsOf))];
}

/** What is known of a tree when only some of its events are. */
function truthOf(tree: Tree, known: ReadonlyMap<string, boolean>): Truth {
  if (typeof tree === 'string') return known.get(tree);
  if ('not' in tree) {
    const inner = truthOf(tree.not, known);
    return inner === undefined ? undefined : !inner;
  }
  const [needed, parts] =
    'and' in tree ? [tree.and.length, tree.and] : 'or' in tree ? [1, tree.or] : [tree.atLeast, tree.of];
  const values = parts.map((part) => truthOf(part, known));
  const sure = values.filter((value) => value === true).length;
  if (sure >= needed) return true;
  return sure + values.filter((value) => value === undefined).length < needed ? false : undefined;
}

/**
 * The smallest sets of events that make the top event happen: no set holds another. By the decomposition of binary decision
 * diagrams: an event is needed in those sets alone that do not do without it.
 *
 * @param tree of a few dozen events
 * @returns    each set in the tree's order of events; `[[]]` for what always happens, none for what never does
 *
 * Source     Rauzy 1993, Reliability Engineering and System Safety 40, 203 (from memory).
 * Checked    tests/core/review/combined/sets.test.ts.
 */
export function minimalCutSets(tree: Tree): string[][] {
  const events = eventsOf(tree);
  const known = new Map<string, boolean>();
  const from = (at: number): string[][] => {
    const value = truthOf(tree, known);
    const event = events[at];
    if (value !== undefined || event === undefined) return value ? [[]] : [];
    known.set(event, false);
    const without = from(at + 1);
    known.set(event, true);
    const needing = from(at + 1).filter((set) => !without.some((smaller) => isSubset(smaller, set)));
    known.delete(event);
    return [...needing.map((set) => [event, ...set]), ...without];
  };
  return from(0);
}

/**
 * Exact probability of the top event, its events being independent.
 *
 * @param chances probability of each event, 0 to 1
 * @returns       0 to 1
 *
 * Checked    tests/core/review/combined/sets.test.ts.
 */
export function topProbability(tree: Tree, chances: ReadonlyMap<string, number>): number {
  const events = eventsOf(tree);
  const known = new Map<string, boolean>();
  const from = (at: number): number => {
    const value = truthOf(tree, known);
    const event = events[at];
    if (value !== undefined || event === undefined) return value ? 1 : 0;
    const chance = chances.get(event) ?? 0;
    known.set(event, true);
    const happens = from(at + 1);
    known.set(event, false);
    const not = from(at + 1);
    known.delete(event);
    return chance * happens + (1 - chance) * not;
  };
  return from(0);
}

/** Probability of every event of a set, one beside the other. */
function setProbability(set: readonly string[], chances: ReadonlyMap<string, number>): number {
  return set.reduce((product, event) => product * (chances.get(event) ?? 0), 1);
}

/** Sum over the sets, at most 1: the rare-event approximation, never too low where no event excludes another. */
export function rareEventSum(sets: readonly (readonly string[])[], chances: ReadonlyMap<string, number>): number {
  return Math.min(
    1,
    sets.reduce((sum, set) => sum + setProbability(set, chances), 0),
  );
}

/** One less the chance that no set happens, as if they shared no event: the min-cut upper bound, closer than the sum. */
export function cutSetBound(sets: readonly (readonly string[])[], chances: ReadonlyMap<string, number>): number {
  return 1 - sets.reduce((none, set) => none * (1 - setProbability(set, chances)), 1);
}

/** How much an event counts. */
export interface Importance {
  /** By how much the top's probability rises from the event never happening to its happening always. */
  birnbaum: number;
  /** The part of the top's probability that goes with the event. */
  criticality: number;
  /** Probability that the event is there, given the top. */
  diagnostic: number;
  /** Times the top's probability with the event there for sure. */
  achievement: number;
  /** Times less the top's probability would be without it; Infinity where it needs the event. */
  reduction: number;
}

/**
 * How much one event counts for the top, by exact probabilities.
 *
 * Checked    tests/core/review/combined/sets.test.ts.
 */
export function importanceOf(tree: Tree, event: string, chances: ReadonlyMap<string, number>): Importance {
  const at = (chance: number) => topProbability(tree, new Map([...chances, [event, chance]]));
  const [top, sure, never] = [topProbability(tree, chances), at(1), at(0)];
  const chance = chances.get(event) ?? 0;
  const birnbaum = sure - never;
  return {
    birnbaum,
    criticality: (birnbaum * chance) / top,
    diagnostic: (chance * sure) / top,
    achievement: sure / top,
    reduction: top / never,
  };
}

/** Whether every member of one list stands in another. */
export function isSubset(small: readonly string[], large: readonly string[]): boolean {
  return small.every((one) => large.includes(one));
}
