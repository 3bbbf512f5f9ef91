import { type Column, Ledger } from '../table/ledger';
import { timeSaid } from '../words/moment';
import { daySaid, type RotaDayView } from './rota-view';

/** The chart as a table: who is on, day by day. */
export function RotaTable({ days, zone }: { days: RotaDayView[]; zone: string }) {
  const columns: Column<RotaDayView>[] = [
    { id: 'day', head: 'Day', cell: ({ date }) => daySaid(date) },
    {
      id: 'on',
      head: 'Who',
      cell: ({ segments, to }) => (
        <ul>
          {segments.map((segment) => (
            <li key={segment.from}>
              {timeSaid(segment.from, zone)} to {segment.to === to ? '24:00' : timeSaid(segment.to, zone)}:{' '}
              {whoSaid(segment)}
            </li>
          ))}
        </ul>
      ),
    },
  ];
  return <Ledger caption={`Times are those of ${zone}.`} columns={columns} rows={days} keyOf={({ date }) => date} />;
}

function whoSaid({ onSite, onCall }: { onSite: string[]; onCall: string[] }) {
  if (onSite.length + onCall.length === 0) return <strong>nobody</strong>;
  return [
    onSite.length > 0 ? `${onSite.join(', ')} on site` : '',
    onCall.length > 0 ? `${onCall.join(', ')} on call` : '',
  ]
    .filter(Boolean)
    .join('; ');
}
