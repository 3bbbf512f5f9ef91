import type { HarmClass, Verdict } from '#core/review/result';
import { type Effect, type Fix, type FixFirst, heldStudy } from '#core/review/study';
import { VERDICT_WORDS } from '#core/review/words';
import { lasting } from '../../words/lasting';
import { type Block, type Line, type Part, type TableBlock, text } from '../block';
import type { DocumentData } from '../document-data';

/** Changes that are read at once; the rest is folded. */
const OPEN = 8;
/** Side effects that are named in a cell. */
const NAMED = 3;

/** Which change of the system wins most, alone and in what order. */
export function fixFirstPart({ study }: DocumentData): Part {
  const held = heldStudy(study);
  return {
    id: 'fix-first',
    title: 'What to fix first',
    wide: true,
    note: 'Each safeguard that could be had is tried in the model, alone and then in the best order.',
    blocks: [...stateSaid(study.state, held !== null), ...(held ? told(held.fixFirst) : [])],
  };
}

/** How far the longer look is, where it is not there. */
export function stateSaid(state: DocumentData['study']['state'], hasBefore: boolean): Block[] {
  if (state === 'ready') return [];
  if (state === 'broken') return [text('Computing this broke. The reason is in the log.')];
  if (state === 'left-out')
    return [text('This machine leaves the longer look out: whoever looks after it has set it so.')];
  return [
    text(
      `This is being computed: pairs of faults and every available safeguard take some minutes.${hasBefore ? ' What follows is as it was before the last change.' : ''}`,
    ),
  ];
}

function told({ alone, order, open }: FixFirst): Block[] {
  if (open === 0) return [text('Every fault case is covered or harmless: nothing has to be fixed first.')];
  if (alone.length === 0)
    return [
      text(
        `${open} fault ${open === 1 ? 'case is' : 'cases are'} not covered, and none of the changes that were tried makes one less grave.`,
      ),
    ];
  const rest = alone.slice(OPEN);
  return [
    text(`${open} fault ${open === 1 ? 'case is' : 'cases are'} not covered today.`),
    // A test of a safeguard wins as tested only, and has no place in the order.
    order.length > 0 ? orderTable(alone, order) : text('None of the changes makes one less grave as claimed.'),
    aloneTable('Each change alone, most won first.', alone.slice(0, OPEN)),
    ...(rest.length > 0
      ? [
          {
            kind: 'fold' as const,
            title: `${rest.length} more ${rest.length === 1 ? 'change' : 'changes'}`,
            blocks: [aloneTable('Continued.', rest)],
          },
        ]
      : []),
  ];
}

function orderTable(alone: readonly Fix[], order: FixFirst['order']): TableBlock {
  const titles = new Map(alone.map(({ id, title }) => [id, title]));
  return {
    kind: 'table',
    caption: 'The order in which to make them: each is the best on top of those before it.',
    columns: [
      { id: 'change', head: 'Change' },
      { id: 'wins', head: 'Cases it wins', figure: true },
      { id: 'left', head: 'Still open after it', figure: true },
      { id: 'losses', head: 'Side effects' },
    ],
    rows: order.map(({ fix, wins, left, losses }, i) => ({
      key: fix,
      cells: [[`${i + 1}. ${titles.get(fix) ?? fix}`], [String(wins)], [String(left)], effectsSaid(losses)],
    })),
  };
}

function aloneTable(caption: string, fixes: readonly Fix[]): TableBlock {
  return {
    kind: 'table',
    caption,
    columns: [
      { id: 'change', head: 'Change' },
      { id: 'wins', head: 'Cases it wins', figure: true },
      { id: 'most', head: 'Most won' },
      { id: 'losses', head: 'Side effects' },
    ],
    rows: fixes.map(({ id, title, column, wins, losses }) => ({
      key: id,
      cells: [
        [`${title}${column === 'tested' ? ' (counts as tested)' : ''}`],
        [String(wins.length)],
        wins[0] ? effectSaid(wins[0]) : ['–'],
        effectsSaid(losses),
      ],
    })),
  };
}

/** What a change does to one case: "Heater 1: welds on: too late → covered, 3.2 h more". */
function effectSaid({ title, from, to, befalls, gainS }: Effect): Line {
  const gain = gainS === null ? '' : `, ${lasting(gainS)} ${gainS < 0 ? 'less' : 'more'} to spare at the worst hour`;
  // Two verdicts on different harms are not set against each other: "some hours → no warning" would read as a loss.
  if (befalls.from === 'animals' && befalls.to !== null && befalls.to !== 'animals')
    return [`${title}: no animals are harmed any more; what remains is ${REMAINS[befalls.to]}, ${VERDICT_WORDS[to]}`];
  return [`${title}: ${sideSaid(from, befalls.from)} → ${sideSaid(to, befalls.to)}${gain}`];
}

const REMAINS: Record<Exclude<HarmClass, 'animals'>, string> = {
  floor: 'water on the floor',
  equipment: 'harm to equipment',
};

const BEFALLS: Record<HarmClass, string> = { animals: '', floor: ' (floor)', equipment: ' (pump)' };

function sideSaid(verdict: Verdict, befalls: HarmClass | null): string {
  return `${VERDICT_WORDS[verdict]}${befalls ? BEFALLS[befalls] : ''}`;
}

function effectsSaid(effects: readonly Effect[]): Line {
  if (effects.length === 0) return ['none'];
  const named = effects.slice(0, NAMED).flatMap((effect) => effectSaid(effect));
  const more = effects.length - NAMED;
  return [`graver: ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}`];
}
