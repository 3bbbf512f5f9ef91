import { heldStudy } from '#core/review/study';
import { FAULTS } from '#core/faults/catalogue';
import type { Column } from '#core/plans/credit';
import type { FaultCase } from '#core/review/result';
import { VERDICT_WORDS } from '#core/review/words';
import { type WouldChange, whatWouldChange } from '#core/review/what-would-change';
import { rotaLanes } from '../../case/rota-lanes';
import { rangeSaid } from '../../system/figure-said';
import { lasting } from '../../words/lasting';
import { outcomeSaid, type Speech } from '../../words/said';
import { type Block, type Line, text } from '../block';
import type { DocumentData } from '../document-data';
import { bothColumns } from './case-lines';

/** Changes that are named where a case is told; the rest stands under what to fix first. */
const NAMED = 4;

/** The column in which a fault case is told: as claimed, unless only as tested anything is harmed. */
export function toldColumn(c: FaultCase): Column {
  return c.claimed.outcomes.length > 0 ? 'claimed' : 'tested';
}

/**
 * All that is known of one fault case.
 *
 * @param isOpen   whether it is read in full at once; otherwise all but its sentences is folded
 */
export function tellCase(data: DocumentData, c: FaultCase, isOpen: boolean): Block[] {
  const column = toldColumn(c);
  const [outcome] = c[column].outcomes;
  const said = outcome ? outcomeSaid(data.speech, outcome) : '';
  const fault = FAULTS.find(({ id }) => id === c.fault);
  const sentences = text(
    `${c.state === 'normal' ? 'In normal running' : `While the state “${c.state.replace('-', ' ')}” lasts`}. `,
    column === 'tested' && outcome ? 'As claimed nothing is harmed. As tested: ' : '',
    said,
  );
  const rest: Block[] = [
    bothColumns(c, data.speech),
    ...(outcome ? [{ kind: 'cover' as const, faultCase: c, lanes: rotaLanes(data.facility, data.system.key) }] : []),
    course(data, c, column),
    { kind: 'heading', says: 'What would change it' },
    { kind: 'list', items: changesSaid(whatWouldChange(data.review, heldStudy(data.study), c), c, data.speech) },
    ...marksOf(c),
    ...(fault ? [text(`The failure mode: ${fault.effect} Source: ${fault.source}.`)] : []),
  ];
  return isOpen ? [sentences, ...rest] : [sentences, { kind: 'fold', title: 'All of this fault case', blocks: rest }];
}

function course({ plotted, at }: DocumentData, c: FaultCase, column: Column): Block {
  if (plotted.has(c.id)) return { kind: 'course', faultCase: c, column };
  return text('Its course hour by hour: ', { link: caseAddress(at, c.id), says: 'the page of this fault case' }, '.');
}

/** Address of the page of a fault case. */
export function caseAddress(at: string, id: string): string {
  return `${at}/cases/${encodeURIComponent(id)}`;
}

function changesSaid(change: WouldChange, c: FaultCase, speech: Speech): Line[] {
  return [
    hourLine(change),
    ...change.untested.map(
      (key): Line => [
        `The test: ${speech.names.safeguard(key)} is counted on as claimed. Without it, as tested, this is `,
        { verdict: change.tested },
        '.',
      ],
    ),
    ...change.fixes
      .slice(0, NAMED)
      .map(
        ({ title, column, effect }): Line => [
          `${title}: then ${column === 'tested' ? 'as tested ' : ''}`,
          { verdict: effect.to, befalls: effect.befalls.to ?? undefined },
          effect.gainS === null
            ? '.'
            : `, with ${lasting(effect.gainS)} ${effect.gainS < 0 ? 'less' : 'more'} at the worst hour.`,
        ],
      ),
    ...change.dead.slice(0, NAMED).map(({ name, verdict }): Line => [`With ${name} dead besides: `, { verdict }, '.']),
    figureLine(change, c, speech),
  ].filter((line) => line.length > 0);
}

function hourLine({ hours }: WouldChange): Line {
  if (!hours) return [];
  if (hours.bare === 0) return ['The hour: none. There is time to spare whenever it begins.'];
  if (hours.bare === hours.harmful && hours.harmful === 168)
    return ['The hour: none. There is nothing to spare at any hour of the week.'];
  const harmless = 168 - hours.harmful;
  return [
    `The hour: nothing to spare at ${hours.bare} of 168 hours${harmless > 0 ? `, no harm at ${harmless}` : ''}; the cover chart shows which.`,
  ];
}

function figureLine({ figure, isAsked }: WouldChange, c: FaultCase, { units }: Speech): Line {
  if (figure)
    return [
      'The figure to find out first: ',
      { strong: figure.name },
      `, which may be ${rangeSaid(units, figure)}. At the bad end of that it alone would change the verdict “${VERDICT_WORDS[c.claimed.verdict]}”.`,
    ];
  if (!c.unsure) return ['A figure: none. Within the plausible ranges the verdict stays the same.'];
  return isAsked
    ? ['A figure: no single one. Only several at the bad end of their ranges together change the verdict.']
    : ['A figure: the plausible ranges together change the verdict; which one does was asked for graver cases only.'];
}

/** The marks of a fault case in whole sentences. */
function marksOf(c: FaultCase): Block[] {
  return [
    ...(c.optimistic
      ? [
          text(
            { strong: 'Optimistic: ' },
            'a tank stands without movement on the way. The model takes it as well mixed, which flatters it: the truth is worse.',
          ),
        ]
      : []),
    ...(c.bound
      ? [
          text(
            { strong: 'A bound: ' },
            'nothing is reckoned to use up the oxidant that comes in, for its decay is not known. It may come to less.',
          ),
        ]
      : []),
    ...(c.outsideValidity
      ? [text({ strong: 'Outside validity: ' }, 'a formula was used beyond the range it was published for.')]
      : []),
  ];
}
