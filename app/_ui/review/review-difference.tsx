import type { Column } from '#core/plans/credit';
import type { ReviewDifference, WorstSide } from '#core/review/review-difference';
import { isSameReview } from '#core/review/review-difference';
import { Fold } from '../frame/fold';
import { VerdictMark } from '../marks/verdict';
import { type Column as TableColumn, Ledger } from '../table/ledger';
import { CaseChanges } from './case-changes';
import { FindingChanges } from './finding-changes';
import { spareOf } from './side';
import style from './review-difference.module.css';

const COLUMNS: readonly { column: Column; name: string }[] = [
  { column: 'claimed', name: 'As claimed' },
  { column: 'tested', name: 'As tested' },
];

/** What the two sides are called. */
export interface Heads {
  before: string;
  after: string;
}

/** A change that is looked at before it is kept. */
const NOW: Heads = { before: 'Now', after: 'With it' };

/** What tells two reviews of a system apart: the worst case before and after, then what is judged otherwise. */
export function ReviewDifferenceView({ difference, heads = NOW }: { difference: ReviewDifference; heads?: Heads }) {
  const { cases, findings, judged } = difference;
  return (
    <div className={style.difference}>
      <p>{heads === NOW || !isSameReview(difference) ? countsSaid(difference) : 'Both reviews say the same.'}</p>
      <WorstTable difference={difference} heads={heads} />
      {cases.length > 0 ? <CaseChanges cases={cases} heads={heads} /> : null}
      {findings.length > 0 ? <FindingChanges findings={findings} /> : null}
      {judged.before === judged.after ? null : (
        <Fold title="How many fault cases are judged">
          <p>
            {judged.before} before, {judged.after} after.
          </p>
        </Fold>
      )}
    </div>
  );
}

/** The difference in one sentence. */
function countsSaid(difference: ReviewDifference): string {
  if (isSameReview(difference)) return 'The review says the same with it.';
  const count = (way: string) => new Set(difference.cases.filter((one) => one.way === way).map(({ id }) => id)).size;
  const parts = (
    [
      ['graver', 'graver'],
      ['new', 'new'],
      ['milder', 'milder'],
      ['gone', 'gone'],
      ['other', 'judged otherwise'],
    ] as const
  ).flatMap(([way, words]) => (count(way) > 0 ? [`${count(way)} ${words}`] : []));
  return parts.length === 0 ? 'No fault case is judged otherwise.' : `Fault cases: ${parts.join(', ')}.`;
}

function WorstTable({ difference: { worst }, heads }: { difference: ReviewDifference; heads: Heads }) {
  const columns: TableColumn<(typeof COLUMNS)[number]>[] = [
    { id: 'column', head: 'Worst fault case', cell: ({ name }) => name },
    { id: 'before', head: heads.before, cell: ({ column }) => <Worst side={worst[column].before} /> },
    { id: 'after', head: heads.after, cell: ({ column }) => <Worst side={worst[column].after} /> },
  ];
  return (
    <Ledger caption="The worst fault case." columns={columns} rows={[...COLUMNS]} keyOf={({ column }) => column} />
  );
}

function Worst({ side }: { side: WorstSide | null }) {
  if (!side) return <>–</>;
  return (
    <>
      <VerdictMark verdict={side.verdict} of={side.befalls ?? undefined} />
      {side.case ? (
        <span className={style.under}>
          {side.case.title}
          {spareOf(side) === '' ? '' : `, ${spareOf(side)}`}
        </span>
      ) : null}
    </>
  );
}
