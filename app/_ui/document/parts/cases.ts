import { caseMarks } from '#core/review/case-marks';
import type { FaultCase, Outcome } from '#core/review/result';
import { gravity } from '#core/review/verdict';
import { caseTitle, worstHour } from '#core/review/words';
import { lastingOrNever } from '../../words/lasting';
import { harmSaid, spareSaid } from '../../words/said';
import { type Part, type TableBlock, text } from '../block';
import type { DocumentData } from '../document-data';
import { caseAddress, toldColumn } from './tell-case';

/** Every fault case in both columns, gravest first; those that harm nothing are folded. */
export function casesPart(data: DocumentData): Part {
  const { cases } = data.review;
  const isQuiet = (c: FaultCase) =>
    Math.min(gravity(c.claimed.verdict), gravity(c.tested.verdict)) > gravity('covered');
  const [grave, quiet] = [cases.filter((c) => !isQuiet(c)), cases.filter(isQuiet)];
  return {
    id: 'cases',
    title: 'Fault cases',
    wide: true,
    note: `${cases.length} were judged: each failure mode of each thing, in each operating state that changes anything.`,
    blocks: [
      grave.length > 0
        ? table(data, grave, 'Each figure is that of the gravest harm, at its worst hour of the week.')
        : text('No fault case harms anything.'),
      ...(quiet.length > 0
        ? [
            {
              kind: 'fold' as const,
              title: `Fault cases that hold or are dormant (${quiet.length})`,
              blocks: [table(data, quiet, 'No harm within seven days though nobody comes.')],
            },
          ]
        : []),
    ],
  };
}

function table(data: DocumentData, cases: FaultCase[], caption: string): TableBlock {
  return {
    kind: 'table',
    caption,
    columns: [
      { id: 'case', head: 'Fault case' },
      { id: 'claimed', head: 'As claimed' },
      { id: 'tested', head: 'As tested' },
      { id: 'harm', head: 'Harm' },
      { id: 'notice', head: 'Noticed', figure: true },
      { id: 'last', head: 'Last chance', figure: true },
      { id: 'right', head: 'Put right', figure: true },
      { id: 'spare', head: 'To spare', figure: true },
      { id: 'marks', head: 'Marks' },
    ],
    rows: cases.map((c) => rowOf(data, c)),
  };
}

function rowOf({ speech, at }: DocumentData, c: FaultCase): TableBlock['rows'][number] {
  const [outcome] = c[toldColumn(c)].outcomes;
  const figure = (of: (o: Outcome, hour: number) => string) => [outcome ? of(outcome, worstHour(outcome)) : '–'];
  return {
    key: c.id,
    cells: [
      [{ link: caseAddress(at, c.id), says: caseTitle(c) }],
      [{ verdict: c.claimed.verdict, befalls: c.claimed.outcomes[0]?.harm.class }],
      [{ verdict: c.tested.verdict, befalls: c.tested.outcomes[0]?.harm.class }],
      figure((o, h) => `${harmSaid(speech, o.harm)}, after ${lastingOrNever(o.harmS[h])}`),
      figure((o, h) => lastingOrNever(o.noticeS[h])),
      figure((o, h) => ((o.lastChanceS[h] ?? 0) < 1 ? 'none' : lastingOrNever(o.lastChanceS[h]))),
      figure((o, h) => lastingOrNever(o.putRightS[h])),
      figure((o, h) => spareSaid(o.spareS[h] ?? null)),
      [caseMarks(c) || '–'],
    ],
  };
}
