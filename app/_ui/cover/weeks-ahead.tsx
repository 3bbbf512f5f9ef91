import type { Facility } from '#core/facility/facility';
import type { DutyException } from '#core/rota/rota';
import { type Column, Ledger } from '../table/ledger';
import Link from '../frame/link';
import { siteAddress } from '../frame/site-address';
import { daySaid } from '../rota/rota-view';
import type { WeekBehindView } from './cover-view';
import { partsSaid, spareSaid, whoSaid } from './said';
import { Spare } from './spare';
import style from './cover.module.css';
import { clockFormat } from '../words/clock-format';

const USUAL_H = 168;

/** Coming weeks that leave less to spare than the usual one, with when, and who would come then. */
export function WeeksAhead({ weeks, facility }: { weeks: WeekBehindView[]; facility: Facility }) {
  if (weeks.length === 0)
    return (
      <p>
        No week of the coming eight leaves less to spare than the usual one, swaps, leave and the clocks counted in.
      </p>
    );
  const { zone } = facility.site;
  const columns: Column<WeekBehindView>[] = [
    {
      id: 'week',
      head: 'Week of',
      cell: ({ monday, lengthH }) => (
        <>
          {daySaid(monday)}
          {lengthH === USUAL_H ? null : <span className={style.about}>{lengthH} hours: the clocks change</span>}
        </>
      ),
    },
    {
      id: 'system',
      head: 'System',
      cell: ({ system }) => facility.systems.find(({ key }) => key === system)?.name ?? system,
    },
    { id: 'spare', head: 'Least', cell: ({ spareS }) => <Spare spareS={spareS} /> },
    { id: 'usual', head: 'In the usual week', cell: ({ usualS }) => spareSaid(usualS) },
    { id: 'at', head: 'When it begins', cell: ({ at }) => momentSaid(zone, at) },
    {
      id: 'why',
      head: 'Fault case, and who would come',
      cell: ({ system, weakest: { case: found, way, lastS } }) => (
        <>
          {found.title}: {whoSaid(way, facility)}
          <span className={style.about}>{partsSaid(way, lastS, facility, system)}</span>
        </>
      ),
    },
    { id: 'behind', head: 'Behind it', cell: ({ behind }) => <Behind behind={behind} facility={facility} /> },
  ];
  return (
    <Ledger
      caption="By the duties as they were agreed, after swaps and leave, on the clocks as they will change. Sooner weeks first."
      columns={columns}
      rows={weeks}
      keyOf={({ monday, system }) => `${monday} ${system}`}
    />
  );
}

/** The swaps and leave without which the week would leave more, or another would come. */
function Behind({ behind, facility }: { behind: DutyException[]; facility: Facility }) {
  if (behind.length === 0) return 'no leave or swap: the shifts of that week, or the clocks';
  const address = siteAddress(facility.site.key, 'rota', 'changes');
  return behind.map((one) => {
    const said = behindSaid(one, facility);
    return (
      <span key={said} className={style.about}>
        <Link href={address}>{said}</Link>
      </span>
    );
  });
}

/** Leave or a swap as the reason of something: "leave of Ada, Fri 4 Dec, 08:00 to Mon 7 Dec, 08:00". */
function behindSaid(one: DutyException, { people, site: { zone } }: Facility): string {
  const name = (key: string) => people.find((person) => person.key === key)?.name ?? key;
  const span = (from: number, to: number) => `${momentSaid(zone, from)} to ${momentSaid(zone, to)}`;
  if (one.kind === 'leave') return `leave of ${name(one.person)}, ${span(one.from, one.to)}`;
  const { gives, takes, date, from, to } = one;
  const part = from === undefined || to === undefined ? '' : `, ${span(from, to)}`;
  return `swap: ${name(takes)} for ${name(gives)}, ${daySaid(date)}${part}`;
}

/** A moment on the clock of the site. @param at ms */
function momentSaid(zone: string, at: number): string {
  const shown = clockFormat('en-GB', {
    ...{ weekday: 'short', day: 'numeric', month: 'short' },
    ...{ hour: '2-digit', minute: '2-digit', timeZone: zone },
  });
  return shown.format(at);
}
