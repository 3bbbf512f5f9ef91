import type { ReactNode } from 'react';
import style from './ledger.module.css';

/** One column of a ledger. The first column heads its row. */
export interface Column<Row> {
  id: string;
  head: ReactNode;
  /** Figures stand in a column of their own, to the right. */
  figure?: boolean;
  cell: (row: Row) => ReactNode;
}

interface LedgerProps<Row> {
  caption: ReactNode;
  columns: Column<Row>[];
  rows: Row[];
  keyOf: (row: Row) => string;
  /** Keep rows as rows on a phone too: for narrow tables of figures. */
  narrow?: boolean;
}

/** A ruled table. On a phone every row becomes a block with the column's name before each value. */
export function Ledger<Row>({ caption, columns, rows, keyOf, narrow = false }: LedgerProps<Row>) {
  const [first, ...rest] = columns;
  if (!first) return null;
  return (
    <table className={`${style.ledger} ${narrow ? style.narrow : style.folding}`}>
      <caption>{caption}</caption>
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.id} scope="col" className={column.figure ? style.figure : undefined}>
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={keyOf(row)}>
            <th scope="row">{first.cell(row)}</th>
            {rest.map((column) => (
              <td key={column.id} className={column.figure ? style.figure : undefined}>
                <span className={style.label} aria-hidden="true">
                  {column.head}
                </span>
                <span className={style.value}>{column.cell(row)}</span>
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
