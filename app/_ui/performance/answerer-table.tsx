import { Ledger } from '../table/ledger';
import { type AnswererView, figureSaid, shareSaid } from './performance-view';

/** What each person had to answer. */
export function AnswererTable({ answerers }: { answerers: AnswererView[] }) {
  if (answerers.length === 0) return <p>Nobody was called.</p>;
  return (
    <Ledger
      caption="Alarms of which each was told; at night is from 22:00 to 06:00 at the site"
      columns={[
        { id: 'name', head: 'Who', cell: ({ name }) => name },
        { id: 'count', head: 'Alarms', figure: true, cell: ({ load }) => load.count },
        { id: 'hour', head: 'An hour', figure: true, cell: ({ load }) => figureSaid(load.perHour) },
        { id: 'ten', head: 'In ten minutes', figure: true, cell: ({ load }) => figureSaid(load.perTenMin) },
        { id: 'most', head: 'Most in ten minutes', figure: true, cell: ({ load }) => load.mostInTenMin },
        { id: 'flood', head: 'Time in floods', figure: true, cell: ({ load }) => shareSaid(load.shareInFlood) },
        {
          id: 'night',
          head: 'At night, a week',
          figure: true,
          cell: ({ atNightPerWeek }) => figureSaid(atNightPerWeek),
        },
      ]}
      rows={answerers}
      keyOf={({ account }) => account}
    />
  );
}
