import { OF_HOLDFAST } from '#core/cautions/cautions-for';
import { cautionsOf } from '../../system/cautions-for';
import { VERDICT_MEANINGS } from '../../words/verdict-meanings';
import type { Line, Part } from '../block';
import type { DocumentData } from '../document-data';

/** What the review does not speak of. */
export function notModelledPart({ review }: DocumentData): Part {
  return {
    id: 'not-modelled',
    title: 'Not modelled',
    note: 'These can kill as well. Holdfast does not compute them.',
    blocks: [{ kind: 'list', items: review.notModelled.map((hazard) => [hazard]) }],
  };
}

/** Where the work that the review asks for can hurt somebody. */
export function cautionsPart({ system, review }: DocumentData): Part {
  return {
    id: 'cautions',
    title: 'Before any work',
    note: 'Where it can hurt somebody. Local codes, licensed people and the makers’ instructions come first.',
    blocks: [{ kind: 'list', items: cautionsOf(system, review).map((says) => [says]) }],
  };
}

const MARKS: readonly Line[] = [
  [
    { strong: 'Unsure: ' },
    'the plausible range of what was entered or filled in, on the bad side, changes the verdict.',
  ],
  [{ strong: 'Optimistic: ' }, 'a tank stands without movement, so that a model of mixed water flatters it.'],
  [{ strong: 'A bound: ' }, 'nothing is reckoned to use up an oxidant that comes in; it may come to less.'],
  [{ strong: 'Outside validity: ' }, 'a formula was used beyond its published range.'],
];

/** How the document is to be read. */
export function readingPart(): Part {
  return {
    id: 'reading',
    title: 'How to read this',
    blocks: [
      {
        kind: 'list',
        items: [
          ...OF_HOLDFAST.map((line): Line => [line]),
          [
            'Each fault begins at every hour of the week and is followed for seven days, once as claimed (every safeguard that is not off works) and once as tested (only those whose last test worked and is not overdue).',
          ],
          [
            'Time to spare is the last chance less the time to put right. The last chance is found by simulating again with everything put right; it comes before the harm.',
          ],
          ['On a plot, what is hatched lies beyond a limit; on a cover chart, hatched hours have nothing to spare.'],
        ],
      },
      { kind: 'heading', says: 'Verdicts, gravest first' },
      { kind: 'list', items: VERDICT_MEANINGS.map(({ verdict, meaning }): Line => [{ verdict }, `: ${meaning}`]) },
      { kind: 'heading', says: 'Marks' },
      { kind: 'list', items: [...MARKS] },
    ],
  };
}
