import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { bytesSaid, type DiskView } from './machine-view';
import style from './machine.module.css';

const STATE_WORDS = { plenty: 'enough', low: 'nearly full', none: 'full' } as const;

const COLUMNS: Column<DiskView>[] = [
  { id: 'folder', head: 'Folder', cell: ({ folder }) => <span className={style.path}>{folder}</span> },
  { id: 'holds', head: 'Holds', cell: ({ holds }) => (holds === 'data' ? 'the data' : 'the backups') },
  { id: 'machine', head: 'On', cell: ({ machine }) => <span className={style.path}>{machine}</span> },
  {
    id: 'state',
    head: 'Room',
    cell: ({ state }) => <span className={state === 'plenty' ? undefined : style.abnormal}>{STATE_WORDS[state]}</span>,
  },
  { id: 'free', head: 'Free', figure: true, cell: ({ free, total }) => `${bytesSaid(free)} of ${bytesSaid(total)}` },
  { id: 'warn', head: 'Warned under', figure: true, cell: ({ warnUnder }) => bytesSaid(warnUnder) },
  { id: 'seen', head: 'Seen', cell: ({ seenAt }) => instantSaid(seenAt, 'UTC') },
];

/** How much room the disks have, as the workers saw them. */
export function Disks({
  disks,
  stopUnder,
  isElsewhere,
}: {
  disks: DiskView[];
  stopUnder: number;
  isElsewhere: boolean;
}) {
  return (
    <>
      {disks.length === 0 ? (
        <p>No worker has looked yet.</p>
      ) : (
        <Ledger
          caption={`Under ${bytesSaid(stopUnder)} on the disk of the data, changes are refused and reading goes on.`}
          columns={COLUMNS}
          rows={disks}
          keyOf={({ machine, folder }) => `${machine} ${folder}`}
        />
      )}
      {isElsewhere ? (
        <p>
          The database stands on a server that was named from outside: how much room that has is not seen from here.
        </p>
      ) : null}
    </>
  );
}
