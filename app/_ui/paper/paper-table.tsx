import { Text, View } from '@react-pdf/renderer';
import { plainOf, type TableBlock, type TableColumn } from '../document/block';
import { PaperLine } from './paper-line';
import { sheet } from './sheet';

/** Letters that the words of a column count as, least and most, when the width is shared out. */
const LEAST = 7;
const MOST = 60;

/** A ruled table on paper; its heads stand again on every sheet that it runs on to. */
export function PaperTable({ table }: { table: TableBlock }) {
  const { caption, columns, rows } = table;
  const widths = widthsOf(table);
  const look = ({ figure }: TableColumn, i: number) =>
    ({ width: `${widths[i] ?? 0}%`, textAlign: figure ? 'right' : 'left' }) as const;
  return (
    <View style={sheet.table}>
      <View fixed>
        <View style={sheet.headRow}>
          {columns.map((column, i) => (
            <Text key={column.id} style={[sheet.headCell, look(column, i)]}>
              {column.head}
            </Text>
          ))}
        </View>
      </View>
      {rows.map(({ key, cells }) => (
        <View key={key} style={sheet.row} wrap={false}>
          {columns.map((column, i) => (
            <Text key={column.id} style={[sheet.cell, look(column, i)]}>
              <PaperLine line={cells[i] ?? []} />
            </Text>
          ))}
        </View>
      ))}
      <Text style={sheet.caption}>{caption}</Text>
    </View>
  );
}

/** Part of the width that each column has, %: by the root of what its longest words need, so that long ones do not take all. */
function widthsOf({ columns, rows }: TableBlock): number[] {
  const needs = columns.map(({ head }, i) => {
    const longest = Math.max(head.length, ...rows.map(({ cells }) => plainOf(cells[i] ?? []).length + 2));
    return Math.sqrt(Math.min(MOST, Math.max(LEAST, longest)));
  });
  const all = needs.reduce((sum, need) => sum + need, 0);
  return needs.map((need) => (100 * need) / all);
}
