import { REFERENCES } from '#core/alarms/performance/references';
import { Ledger } from '../table/ledger';
import type { OftenView, PerformanceView } from './performance-view';

/** Alarms that do what none should, and the ten most frequent. */
export function OftenLists({ figures }: { figures: PerformanceView['figures'] }) {
  const { chattering, fleeting, stale, top } = figures;
  const lists: [string, OftenView[]][] = [
    ['Chattering: three times or more within a minute', chattering],
    ['Fleeting: gone within ten seconds, and not back within a minute', fleeting],
    [`Stale: active for more than a day (fewer than ${REFERENCES.stale} on any day)`, stale],
    ['The ten most frequent', top],
  ];
  return lists.map(([caption, rows]) => <Often key={caption} caption={caption} rows={rows} />);
}

function Often({ caption, rows }: { caption: string; rows: OftenView[] }) {
  if (rows.length === 0) return <p>{caption}: none.</p>;
  return (
    <Ledger
      caption={caption}
      columns={[
        { id: 'name', head: 'Alarm', cell: ({ name }) => name },
        { id: 'system', head: 'System', cell: ({ system }) => system },
        { id: 'times', head: 'Times', figure: true, cell: ({ times }) => times },
      ]}
      rows={rows}
      keyOf={({ alarm }) => alarm}
      narrow
    />
  );
}
