import {
  cutSetBound,
  eventsOf,
  importanceOf,
  isSubset,
  minimalCutSets,
  rareEventSum,
  topProbability,
  type Tree,
} from '#core/review/combined/sets';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const abc = new Map([
  ['A', 0.1],
  ['B', 0.2],
  ['C', 0.3],
]);
const sorted = (sets: string[][]) => sets.map((set) => [...set].sort().join('')).sort();

// Trees with their published answers: the test inputs of the open fault-tree program SCRAM.
const published: [string, Tree, Map<string, number>, string[], number, number][] = [
  ['any of three', { or: ['A', 'B', 'C'] }, abc, ['A', 'B', 'C'], 0.496, 0.6],
  ['two pairs that share one', { or: [{ and: ['A', 'B'] }, { and: ['B', 'C'] }] }, abc, ['AB', 'BC'], 0.074, 0.08],
  ['two of three', { atLeast: 2, of: ['A', 'B', 'C'] }, abc, ['AB', 'AC', 'BC'], 0.098, 0.11],
  [
    'mains, and generator or relay',
    { and: ['m', { or: ['g', 'r'] }] },
    new Map([
      ['m', 0.03],
      ['g', 0.02],
      ['r', 0.05],
    ]),
    ['gm', 'mr'],
    0.00207,
    0.0021,
  ],
];

const trains = {
  and: [{ or: ['v1', 'p1'] }, { or: ['v2', 'p2'] }],
} satisfies Tree;
const unequal = new Map([
  ['v1', 0.4],
  ['p1', 0.6],
  ['v2', 0.5],
  ['p2', 0.7],
]);

describe('a fault tree', () => {
  test.each(published)('of %s has its published sets and probabilities', (_, tree, chances, sets, exact, rare) => {
    expect(sorted(minimalCutSets(tree))).toEqual(sets);
    expect(topProbability(tree, chances)).toBeCloseTo(exact, 12);
    expect(rareEventSum(minimalCutSets(tree), chances)).toBeCloseTo(rare, 12);
  });

  test('of two trains has four pairs; the sum is capped at 1 and the bound is closer', () => {
    const equal = new Map([
      ['v1', 0.5],
      ['p1', 0.7],
      ['v2', 0.5],
      ['p2', 0.7],
    ]);
    const sets = minimalCutSets(trains);
    expect(sorted(sets)).toEqual(['p1p2', 'p1v2', 'p2v1', 'v1v2']);
    expect(topProbability(trains, equal)).toBeCloseTo(0.7225, 12);
    expect(rareEventSum(sets, equal)).toBe(1);
    expect(topProbability(trains, unequal)).toBeCloseTo(0.646, 12);
    expect(cutSetBound(sets, unequal)).toBeCloseTo(0.766144, 12);
  });

  test('of three trains that share some of their failures: exact 0.043080, rare 0.044096', () => {
    // A fifth of each kind's failures takes all three: q = 0.1, beta = 0.2.
    const chances = new Map([
      ['V', 0.02],
      ['P', 0.02],
      ...['1', '2', '3'].flatMap((n): [string, number][] => [
        [`v${n}`, 0.08],
        [`p${n}`, 0.08],
      ]),
    ]);
    const tree: Tree = { and: ['1', '2', '3'].map((n) => ({ or: [`v${n}`, `p${n}`, 'V', 'P'] })) };
    expect(topProbability(tree, chances)).toBeCloseTo(0.04308, 5);
    expect(rareEventSum(minimalCutSets(tree), chances)).toBeCloseTo(0.044096, 6);
  });

  test('of what always or never happens has the empty set, or none', () => {
    const never: Tree = { and: ['A', { not: 'A' }] };
    const always: Tree = { or: ['A', { not: 'A' }] };
    expect([minimalCutSets(never), topProbability(never, abc)]).toEqual([[], 0]);
    expect([minimalCutSets(always), topProbability(always, abc)]).toEqual([[[]], 1]);
  });

  test.each([
    ['p1', 0.51, 0.4737, 0.7895, 1.3158, 1.9],
    ['p2', 0.38, 0.4118, 0.8235, 1.1765, 1.7],
    ['v1', 0.34, 0.2105, 0.5263, 1.3158, 1.2667],
    ['v2', 0.228, 0.1765, 0.5882, 1.1765, 1.2143],
  ])('of two trains: how much %s counts', (event, birnbaum, criticality, diagnostic, achievement, reduction) => {
    const found = importanceOf(trains, event, unequal);
    expect(found.birnbaum).toBeCloseTo(birnbaum, 12);
    expect(found.criticality).toBeCloseTo(criticality, 4);
    expect(found.diagnostic).toBeCloseTo(diagnostic, 4);
    expect(found.achievement).toBeCloseTo(achievement, 4);
    expect(found.reduction).toBeCloseTo(reduction, 4);
  });
});

const anyTree = fc.letrec<{ tree: Tree }>((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('a', 'b', 'c', 'd', 'e'),
    fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((and) => ({ and })),
    fc.array(tie('tree'), { minLength: 1, maxLength: 3 }).map((or) => ({ or })),
    fc.array(tie('tree'), { minLength: 2, maxLength: 4 }).map((of) => ({ atLeast: 2, of })),
  ),
})).tree;

/** Whether the top happens, by plain counting. */
function happens(tree: Tree, there: readonly string[]): boolean {
  if (typeof tree === 'string') return there.includes(tree);
  if ('not' in tree) return !happens(tree.not, there);
  const parts = 'and' in tree ? tree.and : 'or' in tree ? tree.or : tree.of;
  const many = parts.filter((part) => happens(part, there)).length;
  return many >= ('and' in tree ? parts.length : 'or' in tree ? 1 : tree.atLeast);
}

test('the sets of any tree without a not are those of trying every combination, and exact lies below both bounds', () => {
  const chances = new Map(['a', 'b', 'c', 'd', 'e'].map((event, i) => [event, 0.05 + 0.1 * i]));
  fc.assert(
    fc.property(anyTree, (tree) => {
      const events = eventsOf(tree);
      const all = Array.from({ length: 2 ** events.length }, (_, bits) => events.filter((_e, i) => (bits >> i) & 1));
      const lead = all.filter((set) => happens(tree, set));
      const least = lead.filter((set) => !lead.some((other) => other.length < set.length && isSubset(other, set)));
      const sets = minimalCutSets(tree);
      expect(sorted(sets)).toEqual(sorted(least));
      const exact = topProbability(tree, chances);
      expect(exact).toBeLessThanOrEqual(cutSetBound(sets, chances) + 1e-12);
      expect(cutSetBound(sets, chances)).toBeLessThanOrEqual(rareEventSum(sets, chances) + 1e-12);
    }),
    { numRuns: 150 },
  );
});
