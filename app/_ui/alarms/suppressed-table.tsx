import Link from '../frame/link';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { alarmAddress, type SiteView } from './alarm-view';
import style from './alarms.module.css';
import { bySaid, type SuppressedView } from './suppressed-view';

/** The alarms that call nobody now: what keeps each from it, until when, and whether it is active meanwhile. */
export function SuppressedTable({ site, lines }: { site: SiteView; lines: SuppressedView[] }) {
  const columns: Column<SuppressedView>[] = [
    {
      id: 'name',
      head: 'Alarm',
      cell: ({ name, system }) => (
        <>
          {name}
          <span className={style.about}>{system.name}</span>
        </>
      ),
    },
    {
      id: 'by',
      head: 'Calls nobody',
      cell: (line) => (
        <>
          {bySaid(line)}
          {line.reason === null ? null : <span className={style.about}>{line.reason}</span>}
        </>
      ),
    },
    { id: 'since', head: 'Since', cell: ({ begunAt }) => instantSaid(begunAt, site.zone) },
    { id: 'until', head: 'Until', cell: ({ until }) => instantSaid(until, site.zone) },
    {
      id: 'active',
      head: 'Meanwhile',
      cell: ({ active }) =>
        active === null ? (
          'not active'
        ) : (
          <Link href={alarmAddress(site.key, active)}>
            <span aria-hidden="true" className={style.mark}>
              ▲
            </span>{' '}
            active
          </Link>
        ),
    },
  ];
  return (
    <Ledger
      caption={`Judged and kept all the same. Each ends by itself; what is active then calls. Times are those of ${site.zone}.`}
      columns={columns}
      rows={lines}
      keyOf={({ run }) => run}
    />
  );
}
