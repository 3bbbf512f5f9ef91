import {
  type Combination,
  type DemandDrift,
  type MinimalSet,
  type Part as Taking,
  type Study,
  heldStudy,
} from '#core/review/study';
import { lower, VERDICT_WORDS } from '#core/review/words';
import { fromKilograms } from '#core/units/mass';
import type { Custom } from '#core/units/shown';
import { perYearSaid } from '../../words/per-year';
import { harmSaid, type Speech, spareSaid } from '../../words/said';
import { type Block, type Line, type Part, type TableBlock, type TableColumn, text } from '../block';
import type { DocumentData } from '../document-data';
import { stateSaid } from './fix-first';

/** Rows that are read at once; the rest is folded. */
const OPEN = 8;

const KINDS: readonly { kind: Combination['kind']; title: string; caption: string }[] = [
  {
    kind: 'safeguard-dead',
    title: 'A fault while a safeguard is dead',
    caption: 'Most losses are one fault and one safeguard that did not work.',
  },
  { kind: 'common-cause', title: 'Several faults of one cause', caption: 'What one thing takes down together.' },
  { kind: 'two-step', title: 'A fault followed by another', caption: 'What fails after it has begun to help.' },
];

/** Pairs of faults, common causes and the smallest sets that lead to harm; and how much more stock could be carried. */
export function combinationsPart(data: DocumentData): Part {
  const study = heldStudy(data.study);
  return {
    id: 'combinations',
    title: 'More than one thing wrong',
    wide: true,
    note: 'As claimed, at the worst hour of the week. Only what is graver than each fault alone is listed.',
    blocks: [...stateSaid(data.study.state, study !== null), ...(study ? told(study, data.speech) : [])],
  };
}

function told(study: Study, speech: Speech): Block[] {
  const { combinations, minimalSets, drift, tried } = study;
  const rated = [...combinations, ...minimalSets].some(({ perYear }) => perYear !== null);
  return [
    text(`${tried} fault cases and combinations were tried.`),
    ...KINDS.flatMap(({ kind, title, caption }) => {
      const found = combinations.filter((one) => one.kind === kind && one.verdict !== one.alone);
      const rows = found.map((one) => combinationRow(one, speech, rated));
      return rows.length === 0
        ? []
        : [{ kind: 'heading' as const, says: title }, ...folded(caption, columnsOf(rated, true), rows)];
    }),
    { kind: 'heading', says: 'Smallest sets that lead to harm' },
    ...(minimalSets.length === 0
      ? [text('No set of the things tried leads to harm before somebody could put it right.')]
      : folded(
          `Take any one away and what is left is less grave than “${VERDICT_WORDS[study.cut]}”.`,
          columnsOf(rated, false),
          minimalSets.map((one) => setRow(one, speech, rated)),
        )),
    rated
      ? text(
          'How often: of the order of magnitude only, from the rates entered here with their sources. Holdfast has none built in.',
        )
      : text('No frequency is told: no failure rate was entered, and Holdfast has none built in.'),
    ...driftSaid(drift, speech),
  ];
}

function columnsOf(rated: boolean, alone: boolean): TableColumn[] {
  return [
    { id: 'parts', head: 'What is wrong' },
    ...(alone ? [{ id: 'alone', head: 'The fault alone' }] : []),
    { id: 'verdict', head: alone ? 'Together' : 'Verdict' },
    { id: 'harm', head: 'Harm' },
    { id: 'spare', head: 'To spare', figure: true },
    ...(rated ? [{ id: 'often', head: 'How often' }] : []),
  ];
}

function combinationRow(one: Combination, speech: Speech, rated: boolean): TableBlock['rows'][number] {
  const { id, parts, state, because, alone, verdict, harm, spareS, perYear } = one;
  return {
    // The same faults may go together for more than one reason.
    key: `${id} ${because}`,
    cells: [
      [`${partsSaid(parts, state)}${because === '' ? '' : `: ${because}`}`],
      [{ verdict: alone }],
      [{ verdict, befalls: harm?.class }],
      [harm ? harmSaid(speech, harm) : 'none'],
      [harm ? spareSaid(spareS) : '–'],
      ...(rated ? [oftenSaid(perYear)] : []),
    ],
  };
}

function setRow({ parts, state, verdict, harm, spareS, perYear }: MinimalSet, speech: Speech, rated: boolean) {
  return {
    key: `${partsSaid(parts, state)} ${harm.what}`,
    cells: [
      [partsSaid(parts, state)],
      [{ verdict, befalls: harm.class }],
      [harmSaid(speech, harm)],
      [spareSaid(spareS)],
      ...(rated ? [oftenSaid(perYear)] : []),
    ],
  };
}

function oftenSaid(perYear: number | null): Line {
  return [perYear === null ? 'not all rates entered' : perYearSaid(perYear)];
}

function partsSaid(parts: readonly Taking[], state: string): string {
  const named = parts.map((part) =>
    part.kind === 'fault' ? `${part.thing.name}: ${lower(part.title)}` : `${part.name} does not work`,
  );
  return `${named.join(' + ')}${state === 'normal' ? '' : `, during ${state.replace('-', ' ')}`}`;
}

function folded(caption: string, columns: TableColumn[], rows: TableBlock['rows']): Block[] {
  const rest = rows.slice(OPEN);
  const table = (said: string, of: TableBlock['rows']): TableBlock => ({
    kind: 'table',
    caption: said,
    columns,
    rows: of,
  });
  return [
    table(caption, rows.slice(0, OPEN)),
    ...(rest.length > 0
      ? [{ kind: 'fold' as const, title: `${rest.length} more`, blocks: [table('Continued.', rest)] }]
      : []),
  ];
}

function driftSaid(drift: readonly DemandDrift[], speech: Speech): Block[] {
  if (drift.length === 0) return [];
  const kg = (mass: number) => massSaid(speech.units, mass);
  return [
    { kind: 'heading', says: 'How much more stock the air carries' },
    {
      kind: 'list',
      items: drift.map(
        ({ tank, unit, nowKg, carriesKg }): Line => [
          `${speech.names.tank(tank)}: ${kg(nowKg)} of animals today. With ${speech.names.equipment(unit)} lost, the air that remains carries ${kg(carriesKg)} through the night${carriesKg < nowKg ? ': less than there is' : ''}.`,
        ],
      ),
    },
  ];
}

function massSaid(units: Custom, kg: number): string {
  const value = fromKilograms(kg, units === 'us' ? 'lb' : 'kg');
  return `${Number(value.toPrecision(3))}\u00a0${units === 'us' ? 'lb' : 'kg'}`;
}
