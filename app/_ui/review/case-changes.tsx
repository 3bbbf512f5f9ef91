import type { CaseChange, CaseSide } from '#core/review/difference/case-changes';
import { Fold } from '../frame/fold';
import { VerdictMark } from '../marks/verdict';
import { type Column, Ledger } from '../table/ledger';
import type { Heads } from './review-difference';
import { spareOf } from './side';
import style from './review-difference.module.css';

const WAY_WORDS: Record<CaseChange['way'], string> = {
  graver: 'graver',
  milder: 'milder',
  new: 'new',
  gone: 'gone',
  other: 'other',
};
/** Rows that are read at once; the rest is folded. */
const OPEN = 6;

/** One row: a change that is the same in both columns stands once. */
interface Row extends Omit<CaseChange, 'column'> {
  columns: string;
}

/** Fault cases that are judged otherwise, what becomes graver first. */
export function CaseChanges({ cases, heads }: { cases: CaseChange[]; heads: Heads }) {
  const rows = rowsOf(cases);
  return (
    <>
      <Table
        rows={rows.slice(0, OPEN)}
        heads={heads}
        caption="Fault cases that are judged otherwise, at their worst hour."
      />
      {rows.length > OPEN ? (
        <Fold title={`${rows.length - OPEN} more`}>
          <Table rows={rows.slice(OPEN)} heads={heads} caption="Fault cases that are judged otherwise, continued." />
        </Fold>
      ) : null}
    </>
  );
}

function Table({ rows, caption, heads }: { rows: Row[]; caption: string; heads: Heads }) {
  const columns: Column<Row>[] = [
    {
      id: 'case',
      head: 'Fault case',
      cell: ({ title, columns: told }) => (
        <>
          {title}
          <span className={style.under}>{told}</span>
        </>
      ),
    },
    { id: 'way', head: 'Becomes', cell: ({ way }) => <span data-way={way}>{WAY_WORDS[way]}</span> },
    { id: 'before', head: heads.before, cell: ({ before, befalls }) => <Side side={before} befalls={befalls} /> },
    { id: 'after', head: heads.after, cell: ({ after, befalls }) => <Side side={after} befalls={befalls} /> },
  ];
  return <Ledger caption={caption} columns={columns} rows={rows} keyOf={keyOf} />;
}

function Side({ side, befalls }: { side: CaseSide | null; befalls: CaseChange['befalls'] }) {
  if (!side) return <>not a fault case</>;
  const spare = spareOf(side);
  return (
    <>
      <VerdictMark verdict={side.verdict} of={befalls ?? undefined} />
      {spare === '' ? null : <span className={style.under}>{spare}</span>}
    </>
  );
}

const keyOf = ({ id, befalls, columns }: Row) => `${id} ${befalls} ${columns}`;

function rowsOf(cases: readonly CaseChange[]): Row[] {
  const rows: Row[] = [];
  for (const { column, ...change } of cases) {
    const same = rows.find((row) => isAlike(row, change));
    if (same) same.columns = 'as claimed and as tested';
    else rows.push({ ...change, columns: column === 'claimed' ? 'as claimed' : 'as tested' });
  }
  return rows;
}

function isAlike(row: Row, change: Omit<CaseChange, 'column'>): boolean {
  const said = (one: Omit<CaseChange, 'column'>) =>
    [
      one.id,
      one.befalls,
      one.way,
      ...[one.before, one.after].map((side) => side && `${side.verdict} ${spareOf(side)}`),
    ].join();
  return said(row) === said(change);
}
