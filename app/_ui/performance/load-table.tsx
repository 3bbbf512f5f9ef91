import type { Load } from '#core/alarms/performance/load';
import { REFERENCES } from '#core/alarms/performance/references';
import { Ledger } from '../table/ledger';
import { figureSaid, shareSaid } from './performance-view';

interface Row {
  what: string;
  is: string;
  line: string;
}

/** How many alarms there were at the site, beside the lines of the standard. @param said an instant in words */
export function LoadTable({ load, said }: { load: Load; said: (ms: number) => string }) {
  return (
    <>
      <Ledger<Row>
        caption="All alarms of the site"
        columns={[
          { id: 'what', head: 'What', cell: ({ what }) => what },
          { id: 'is', head: 'Here', figure: true, cell: ({ is }) => is },
          { id: 'line', head: 'Line', figure: true, cell: ({ line }) => line },
        ]}
        rows={rowsOf(load)}
        keyOf={({ what }) => what}
        narrow
      />
      {load.floods.length === 0 ? (
        <p>No flood: never more than ten in ten minutes.</p>
      ) : (
        <ul>
          {load.floods.map(({ fromMs, toMs, count }) => (
            <li key={fromMs}>
              Flood: {count} alarms, {said(fromMs)} to {said(toMs)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function rowsOf({ perHour, perTenMin, mostInTenMin, shareOver, shareInFlood }: Load): Row[] {
  const { perHour: hour, perTenMin: ten } = REFERENCES;
  const share = `under ${shareSaid(REFERENCES.shareOver)}`;
  return [
    { what: 'An hour', is: figureSaid(perHour), line: `${hour.acceptable}, at most ${hour.manageable}` },
    { what: 'In ten minutes', is: figureSaid(perTenMin), line: `${ten.acceptable}, at most ${ten.manageable}` },
    { what: 'Most in ten minutes', is: String(mostInTenMin), line: `at most ${REFERENCES.mostInTenMin}` },
    { what: 'Ten minutes with more than ten', is: shareSaid(shareOver), line: share },
    { what: 'Time in floods', is: shareSaid(shareInFlood), line: share },
  ];
}
