import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { type PlanMoment, type PlanVersionData, STATUS_WORDS } from './data';
import style from './plans.module.css';

/** Every version of a plan with its life, the latest first. */
export function VersionTable({ versions, zone }: { versions: PlanVersionData[]; zone: string }) {
  const columns: Column<PlanVersionData>[] = [
    { id: 'version', head: 'Version', cell: ({ version }) => version },
    { id: 'status', head: 'Is', cell: ({ status }) => STATUS_WORDS[status] },
    { id: 'reason', head: 'Written because', cell: ({ reason }) => reason ?? '–' },
    {
      id: 'life',
      head: 'Its life',
      cell: ({ life }) => (
        <ol className={style.life}>
          {life.map((moment) => (
            <li key={moment.status}>{momentSaid(moment, zone)}</li>
          ))}
        </ol>
      ),
    },
  ];
  return (
    <Ledger
      caption={`Times are those of ${zone}.`}
      columns={columns}
      rows={versions}
      keyOf={({ version }) => String(version)}
    />
  );
}

/** Something that a version came to be, when, by whom, why: "in force 25 Nov 2026, 18:30:00, Wren". */
function momentSaid({ status, at, by, reason }: PlanMoment, zone: string): string {
  const parts = [
    `${STATUS_WORDS[status]} ${instantSaid(at.toISOString(), zone)}`,
    by,
    status === 'draft' ? null : reason,
  ];
  return parts.filter((part) => part !== null).join(', ');
}
