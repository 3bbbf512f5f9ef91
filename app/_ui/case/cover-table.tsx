import { type Column, Ledger } from '../table/ledger';
import { dayName } from '../plot/time-ticks';
import { written } from '../plot/written';
import type { CoverPoint } from './cover-points';

const HOURS = Array.from({ length: 24 }, (_, hour) => hour);
const DAYS = Array.from({ length: 7 }, (_, day) => day);

/** Hours to spare by hour of the day and day of the week. */
export function CoverTable({ points }: { points: CoverPoint[] }) {
  const columns: Column<number>[] = [
    { id: 'hour', head: 'Hour', cell: (hour) => String(hour).padStart(2, '0') },
    ...DAYS.map((day) => ({
      id: dayName(day),
      head: dayName(day),
      figure: true,
      cell: (hour: number) => said(points[24 * day + hour]),
    })),
  ];
  return (
    <Ledger
      narrow
      caption="Hours to spare when the fault begins at this hour. No harm: –. Nobody comes: none."
      columns={columns}
      rows={HOURS}
      keyOf={String}
    />
  );
}

function said(point: CoverPoint | undefined): string {
  if (!point || point.spareH === null) return '–';
  return Number.isFinite(point.spareH) ? written(point.spareH, 1) : 'none';
}
