import { type Column, Ledger } from '../table/ledger';
import { lasting } from '../words/lasting';
import { written } from '../plot/written';
import type { QuantityChart } from './quantities';

/** Moments of the course that the table shows. */
const ROWS = 12;

interface PlotTableProps {
  charts: QuantityChart[];
  main: { key: string; name: string };
}

/** The plot of the harmed tank as a table. */
export function PlotTable({ charts, main }: PlotTableProps) {
  const own = charts.flatMap((chart) => {
    const track = chart.tracks.find((t) => t.tank === main.key) ?? chart.tracks[0];
    return track ? [{ chart, track }] : [];
  });
  const times = own[0]?.track.timesS ?? [];
  const rows = Array.from({ length: ROWS + 1 }, (_, i) => Math.round((i * (times.length - 1)) / ROWS));
  const columns: Column<number>[] = [
    { id: 'after', head: 'After', cell: (at) => (at === 0 ? '0' : lasting(times[at] ?? 0)) },
    ...own.map(({ chart, track }) => ({
      id: chart.quantity,
      head: `${chart.title}${chart.unit ? `, ${chart.unit}` : ''}`,
      figure: true,
      cell: (at: number) => written(track.values[at] ?? 0, chart.decimals),
    })),
  ];
  return <Ledger narrow caption={`${main.name} when nobody comes`} columns={columns} rows={rows} keyOf={String} />;
}
