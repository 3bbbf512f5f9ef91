import type { Plan } from '#core/plans/plan';
import { type Column, Ledger } from '../table/ledger';
import { type PlanLine, planLines } from '../words/plan-lines';
import type { Speech } from '../words/said';
import { keyOf, type LineChange, planDifference } from './plan-difference';
import style from './plans.module.css';

const BY_WORDS: Record<PlanLine['by'], string> = {
  'hard-wired': 'hard wiring',
  controller: 'a controller',
  person: 'a person',
};
const WAY_WORDS: Record<LineChange['way'], string> = { stays: 'stays', comes: 'comes', goes: 'goes' };

const COLUMNS: Column<PlanLine>[] = [
  { id: 'layer', head: 'Layer', cell: ({ layer }) => layer },
  { id: 'says', head: 'What it does', cell: ({ says }) => says },
  { id: 'by', head: 'Carried out by', cell: ({ by }) => BY_WORDS[by] },
  {
    id: 'safeguard',
    head: 'Safeguard',
    cell: ({ safeguard, layer }) => safeguard ?? (layer === 'interlock' ? 'no ledger of tests' : ''),
  },
];

/** A plan line by line, highest authority first. */
export function PlanLinesTable({ plan, speech }: { plan: Plan; speech: Speech }) {
  return (
    <>
      <Ledger
        caption="Highest authority first; the order is fixed."
        columns={COLUMNS}
        rows={planLines(speech, { plan })}
        keyOf={keyOf}
      />
      <OwnWordNote plan={plan} />
    </>
  );
}

/** Two plans side by side, line by line. */
export function PlanDifferenceTable({
  before,
  after,
  speech,
  caption,
}: {
  before: Plan;
  after: Plan;
  speech: Speech;
  caption: string;
}) {
  const columns: Column<LineChange>[] = [
    ...COLUMNS.map((column) => ({ ...column, cell: ({ line }: LineChange) => column.cell(line) })),
    { id: 'way', head: 'Line', cell: ({ way }) => <span className={style[way]}>{WAY_WORDS[way]}</span> },
  ];
  const rows = planDifference(speech, before, after);
  return (
    <>
      {rows.every(({ way }) => way === 'stays') ? <p>Both say the same, line by line.</p> : null}
      <Ledger caption={caption} columns={columns} rows={rows} keyOf={({ line, way }) => `${way} ${keyOf(line)}`} />
      <OwnWordNote plan={after} />
    </>
  );
}

function OwnWordNote({ plan: { ownWord } }: { plan: Plan }) {
  return ownWord ? <p>It stands on its author’s word alone: {ownWord.why}</p> : null;
}
