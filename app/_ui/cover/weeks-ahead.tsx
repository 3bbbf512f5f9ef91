import type { Facility } from '#core/facility/facility';
import type { WeekAhead } from '#core/review/people/coming-weeks';
import { type Column, Ledger } from '../table/ledger';
import { daySaid } from '../rota/rota-view';
import { partsSaid, spareSaid, whoSaid } from './said';
import { Spare } from './spare';
import style from './cover.module.css';

const USUAL_H = 168;

/** Coming weeks that leave less to spare than the usual one, with when, and who would come then. */
export function WeeksAhead({ weeks, facility }: { weeks: WeekAhead[]; facility: Facility }) {
  if (weeks.length === 0)
    return (
      <p>
        No week of the coming eight leaves less to spare than the usual one, swaps, leave and the clocks counted in.
      </p>
    );
  const { zone } = facility.site;
  const columns: Column<WeekAhead>[] = [
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

/** A moment on the clock of the site. @param at ms */
function momentSaid(zone: string, at: number): string {
  const shown = new Intl.DateTimeFormat('en-GB', {
    ...{ weekday: 'short', day: 'numeric', month: 'short' },
    ...{ hour: '2-digit', minute: '2-digit', timeZone: zone },
  });
  return shown.format(at);
}
