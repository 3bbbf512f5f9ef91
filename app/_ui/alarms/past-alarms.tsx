import Link from '../frame/link';
import type { Custom } from '#core/units/shown';
import { type Column, Ledger } from '../table/ledger';
import { instantSaid } from '../words/instant';
import { lasting } from '../words/lasting';
import { type AlarmView, alarmAddress, type SiteView, valueSaid } from './alarm-view';
import style from './alarms.module.css';

interface PastAlarmsProps {
  site: SiteView;
  alarms: AlarmView[];
  units: Custom;
}

/** The alarms of the past seven days that want nothing any more. */
export function PastAlarms({ site, alarms, units }: PastAlarmsProps) {
  if (alarms.length === 0) return <p>None.</p>;
  const columns: Column<AlarmView>[] = [
    { id: 'raised', head: 'Raised', cell: ({ raisedAt }) => instantSaid(raisedAt, site.zone) },
    {
      id: 'name',
      head: 'Alarm',
      cell: ({ id, name, system }) => (
        <>
          <Link href={alarmAddress(site.key, id)}>{name}</Link>
          <span className={style.about}>{system.name}</span>
        </>
      ),
    },
    {
      id: 'value',
      head: 'Value',
      figure: true,
      cell: ({ value, definition, caller }) =>
        value === null ? (caller === null ? 'silence' : 'by hand') : valueSaid(definition, value, units),
    },
    { id: 'lasted', head: 'Lasted', figure: true, cell: lastedSaid },
    {
      id: 'acknowledged',
      head: 'Acknowledged',
      cell: ({ acknowledged: seen }) => (seen ? `${seen.by}, ${instantSaid(seen.at, site.zone)}` : '–'),
    },
  ];
  return (
    <Ledger
      caption={`The newest first. Times are those of ${site.zone}.`}
      columns={columns}
      rows={alarms}
      keyOf={({ id }) => id}
    />
  );
}

function lastedSaid({ raisedAt, returnedAt, endedBy }: AlarmView): string {
  if (returnedAt === null) return '–';
  const said = lasting((Date.parse(returnedAt) - Date.parse(raisedAt)) / 1000);
  return endedBy === null ? said : `${said}, then ended`;
}
