import { type Column, Ledger } from '../table/ledger';
import type { FigureRow } from './figure-rows';
import style from './figure-table.module.css';

/** Figures of the description, each with where it comes from. */
export function FigureTable({ caption, rows }: { caption: string; rows: FigureRow[] }) {
  if (rows.length === 0) return null;
  const ranged = rows.some((row) => row.range !== '');
  const sourced = rows.some((row) => row.source !== '');
  const columns: Column<FigureRow>[] = [
    { id: 'of', head: 'Of', cell: (row) => row.of },
    { id: 'name', head: 'Figure', cell: (row) => row.name },
    { id: 'value', head: 'Value', figure: true, cell: (row) => row.value },
    ...(ranged
      ? [{ id: 'range', head: 'Plausible range', figure: true, cell: (row: FigureRow) => row.range || 'exact' }]
      : []),
    { id: 'origin', head: 'Comes from', cell: (row) => <span className={style[row.origin]}>{row.origin}</span> },
    ...(sourced ? [{ id: 'source', head: 'Source', cell: (row: FigureRow) => row.source }] : []),
  ];
  return <Ledger caption={caption} columns={columns} rows={rows} keyOf={(row) => row.key} />;
}
