import { written } from '../plot/written';
import { type Column, Ledger } from '../table/ledger';
import type { DrawnSeries } from './series-plots';
import { whenSaid } from './when';

/** Of each sensor the first, lowest, highest and last reading of the window. */
export function SeriesTable({ series, zone }: { series: readonly DrawnSeries[]; zone: string }) {
  const figure = (pick: (points: DrawnSeries['points']) => DrawnSeries['points'][number] | undefined) => {
    return (one: DrawnSeries) => {
      const found = pick([...one.points, ...one.byHand].sort((a, b) => a.atMs - b.atMs));
      return found ? `${written(found.value, one.decimals)} at ${whenSaid(found.atMs, zone)}` : '–';
    };
  };
  const columns: Column<DrawnSeries>[] = [
    { id: 'sensor', head: 'Sensor', cell: ({ title }) => title },
    { id: 'first', head: 'First', cell: figure((points) => points[0]) },
    { id: 'low', head: 'Lowest', cell: figure((points) => extreme(points, (a, b) => a < b)) },
    { id: 'high', head: 'Highest', cell: figure((points) => extreme(points, (a, b) => a > b)) },
    { id: 'last', head: 'Last', cell: figure((points) => points.at(-1)) },
    { id: 'bad', head: 'Bad, not drawn', figure: true, cell: ({ bad }) => bad },
  ];
  return <Ledger caption="Readings in this time." columns={columns} rows={[...series]} keyOf={({ id }) => id} />;
}

function extreme(points: DrawnSeries['points'], beats: (a: number, b: number) => boolean) {
  return points.reduce<DrawnSeries['points'][number] | undefined>(
    (best, point) => (best && !beats(point.value, best.value) ? best : point),
    undefined,
  );
}
