import Link from '../../frame/link';
import { type Column, Ledger } from '../../table/ledger';
import { instantSaid } from '../../words/instant';
import { sensorAddress } from '../words';
import type { TakenView } from './look-view';

type SensorRow = TakenView['outcome']['sensors'][number];

/** What came of a file: how much of it is stored, and what is not, and why. */
export function OutcomeNote({ taken }: { taken: TakenView }) {
  const { outcome, site, sensors } = taken;
  const own = (id: string) => sensors.find((one) => one.id === id);
  const columns: Column<SensorRow>[] = [
    {
      id: 'sensor',
      head: 'Sensor',
      cell: ({ sensor }) => {
        const found = own(sensor);
        return found ? (
          <Link href={`${sensorAddress(site.key, found.system, found.key)}${untilOf(taken)}`}>{found.name}</Link>
        ) : (
          '–'
        );
      },
    },
    { id: 'stored', head: 'Stored', figure: true, cell: ({ stored }) => stored },
    { id: 'repeats', head: 'There already', figure: true, cell: ({ repeats }) => repeats },
    { id: 'conflicts', head: 'In conflict', figure: true, cell: ({ conflicts }) => conflicts },
    { id: 'suspect', head: 'Suspect', figure: true, cell: ({ suspect }) => suspect },
    { id: 'bad', head: 'Bad', figure: true, cell: ({ bad }) => bad },
  ];
  return (
    <>
      <h2>{taken.name} is taken in</h2>
      <p>
        {outcome.rows} rows: {outcome.stored} readings stored, {outcome.repeats} there already, {outcome.conflicts} in
        conflict, {outcome.refused} refused, {outcome.missing} cells without a reading. What comes by file is of the
        past: none of it counts as late, and no alarm is held to it.
      </p>
      <OrderNote taken={taken} />
      <Ledger narrow caption="By sensor" columns={columns} rows={outcome.sensors} keyOf={({ sensor }) => sensor} />
      <Faults taken={taken} nameOf={(id) => own(id)?.name ?? id} />
    </>
  );
}

function OrderNote({ taken: { outcome, site } }: { taken: TakenView }) {
  const { order, from, to } = outcome;
  const notes = [
    from && to ? `From ${instantSaid(from, site.zone)} to ${instantSaid(to, site.zone)}.` : '',
    order.isNewestFirst ? 'The newest row stood first; readings stand in the order of their times.' : '',
    order.jumps > 0
      ? `Time goes against the order of the file ${order.jumps} times, first at line ${order.jumpLines.join(', ')}.`
      : '',
    order.skipped > 0
      ? `${order.skipped} rows stand at a time that the clocks leapt over; they are put off by the length of the leap.`
      : '',
    order.repeated > 0
      ? `${order.repeated} rows stand at a time that the clocks showed twice; by their order ${order.second} of them are of the second time.`
      : '',
  ].filter((note) => note !== '');
  return notes.map((note) => <p key={note}>{note}</p>);
}

function Faults({ taken: { outcome, site }, nameOf }: { taken: TakenView; nameOf: (id: string) => string }) {
  const lines = [
    ...outcome.firstConflicts.map(
      ({ line, sensor, at, value }) =>
        `Line ${line}: ${nameOf(sensor)} on ${instantSaid(at, site.zone)} is ${value} here, and another value is stored. What is stored stays.`,
    ),
    ...outcome.firstRefused.map(
      ({ line, place, says }) => `Line ${line}${place === null ? '' : `, column ${place + 1}`}: ${says}.`,
    ),
  ];
  if (lines.length === 0) return null;
  const count = outcome.conflicts + outcome.refused;
  return (
    <>
      <h3>{lines.length < count ? `The first ${lines.length} of ${count} that are not stored` : 'Not stored'}</h3>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

/** Leads to the last days of what was taken in. */
function untilOf({ outcome: { to } }: TakenView): string {
  return to === null ? '' : `?span=week&until=${to.slice(0, 10)}`;
}
