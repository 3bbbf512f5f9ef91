import type { Sheet } from '#core/almanac/table';
import { type Column, Ledger } from '../table/ledger';

type Row = Sheet['rows'][number] & { key: string };

/** A table of the almanac, ruled. Words fold on a phone, figures stay in their rows. */
export function RuledSheet({ sheet }: { sheet: Sheet }) {
  const figure = sheet.words !== true;
  const columns: Column<Row>[] = [
    { id: 'head', head: sheet.corner, cell: ({ head }) => head },
    ...sheet.columns.map((head, i): Column<Row> => ({ id: head, head, figure, cell: ({ cells }) => cells[i] })),
  ];
  const rows = sheet.rows.map((row): Row => ({ ...row, key: `${row.head} ${row.cells[0]}` }));
  return <Ledger caption={sheet.caption} columns={columns} rows={rows} keyOf={({ key }) => key} narrow={figure} />;
}
