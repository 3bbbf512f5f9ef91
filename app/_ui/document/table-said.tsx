import Link from '../frame/link';
import { VerdictMark } from '../marks/verdict';
import { type Column, Ledger } from '../table/ledger';
import type { Line, TableBlock } from './block';

/** A line with its links and marks. */
export function LineSaid({ line }: { line: Line }) {
  return line.map((piece, i) => {
    const key = `${i}`;
    if (typeof piece === 'string') return piece;
    if ('strong' in piece) return <strong key={key}>{piece.strong}</strong>;
    if ('verdict' in piece)
      return <VerdictMark key={key} verdict={piece.verdict} of={piece.befalls} unsure={piece.unsure} />;
    return (
      <Link key={key} href={piece.link}>
        {piece.says}
      </Link>
    );
  });
}

/** A ruled table. */
export function TableSaid({ table: { caption, columns, rows } }: { table: TableBlock }) {
  const shown = columns.map(
    ({ id, head, figure }, i): Column<TableBlock['rows'][number]> => ({
      id,
      head,
      figure,
      cell: ({ cells }) => <LineSaid line={cells[i] ?? []} />,
    }),
  );
  return <Ledger caption={caption} columns={shown} rows={rows} keyOf={({ key }) => key} />;
}
