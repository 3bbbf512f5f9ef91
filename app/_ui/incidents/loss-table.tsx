import type { ReactNode } from 'react';
import type { GroupLoss } from '#core/incidents/losses';
import { entrySaid } from '#core/incidents/words';
import type { Custom } from '#core/units/shown';
import { Fold } from '../frame/fold';
import { type Column, Ledger } from '../table/ledger';
import { figure } from '../units/figures';
import type { HeadView } from './incident-view';
import type { FindingsView } from './investigation-view';
import { When } from './when';

const COLUMNS: Column<GroupLoss>[] = [
  { id: 'group', head: 'Species group', cell: ({ group }) => group },
  { id: 'dead', head: 'Dead', figure: true, cell: ({ dead }) => dead },
  { id: 'put-down', head: 'Put down', figure: true, cell: ({ putDown }) => putDown },
  { id: 'missing', head: 'Missing', figure: true, cell: ({ missing }) => missing },
  { id: 'affected', head: 'Affected', figure: true, cell: ({ affected }) => affected },
  { id: 'late', head: 'Of these late', figure: true, cell: ({ late }) => late },
];

interface LossProps {
  page: Pick<FindingsView, 'losses' | 'lossEntries'> & { head: HeadView };
  units: Custom;
  /** The form by which an entry is taken back. */
  back?: (entry: string) => ReactNode;
}

/** What was lost, by species group, with the water; and the entries it is added up from. */
export function LossTable({ page: { head, losses, lossEntries }, units, back }: LossProps) {
  const { groups, total, waterL, followedUntilMs } = losses;
  const { zone } = head.site;
  if (lossEntries.length === 0)
    return (
      <p>
        No loss is recorded. Animals are followed until <When atMs={followedUntilMs} zone={zone} />.
      </p>
    );
  return (
    <>
      {groups.length > 0 ? (
        <Ledger
          caption={`Dead ${total.dead}, put down ${total.putDown}, missing ${total.missing}, affected ${total.affected}. Late: more than a day after it was put right.`}
          columns={COLUMNS}
          rows={groups}
          keyOf={({ group }) => group}
          narrow
        />
      ) : null}
      <p>
        {waterL > 0 ? `Water lost: ${figure(units, 'volume', waterL)}. ` : ''}Animals are followed until{' '}
        <When atMs={followedUntilMs} zone={zone} />.
      </p>
      {back ? (
        <Fold title={`The entries this is added up from (${lossEntries.length})`}>
          <ul>
            {lossEntries.map((entry) => (
              <li key={entry.id}>
                <When atMs={entry.atMs} zone={zone} />: {entrySaid(entry, new Map())}
                {back(entry.id)}
              </li>
            ))}
          </ul>
        </Fold>
      ) : null}
    </>
  );
}
