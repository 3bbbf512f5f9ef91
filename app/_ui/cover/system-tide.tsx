import Link from '../frame/link';
import type { Facility } from '#core/facility/facility';
import { alikeStretches } from '#core/review/people/alike';
import { type CoverOfSystem, leastOf } from '#core/review/people/site-cover';
import { bareSaid } from '../case/bare-said';
import { CoverChart } from '../case/cover-chart';
import { pointsOf } from '../case/cover-points';
import { CoverTable } from '../case/cover-table';
import { rotaLanes } from '../case/rota-lanes';
import { Fold } from '../frame/fold';
import { siteAddress } from '../frame/site-address';
import { VerdictMark } from '../marks/verdict';
import { comesThrough } from './comes-through';
import { spareSaid } from './said';
import { WeakTable } from './weak-table';
import style from './cover.module.css';

interface SystemTideProps {
  site: string;
  facility: Facility;
  of: CoverOfSystem;
  column: 'claimed' | 'tested';
}

/** The cover chart of a system: the least time to spare over its fault cases through the hours of the week, and who would come. */
export function SystemTide({ site, facility, of, column }: SystemTideProps) {
  const week = of[column];
  const points = pointsOf(week.spareS);
  const otherS = week.changedS ?? (column === 'claimed' ? of.tested.spareS : null);
  const differs = otherS?.some((s, h) => s !== week.spareS[h]) ? pointsOf(otherS) : null;
  const broken = week.changedS ? 'with the change that is asked about' : 'as tested';
  return (
    <figure className={style.figure}>
      <figcaption>
        <h3>
          <Link href={siteAddress(site, 'systems', of.system)}>{of.name}</Link>
        </h3>
        {week.drawn === 0 ? 'No fault case harms anything.' : `${leastSaid(leastOf(week))} ${bareSaid(points)}`}{' '}
        {differs ? `The broken line is the cover ${broken}.` : ''}
      </figcaption>
      {week.drawn === 0 ? null : (
        <>
          <CoverChart
            title={`Cover chart of ${of.name}: ${bareSaid(points)} The same stands in the tables below.`}
            claimed={points}
            tested={differs}
            lanes={rotaLanes(facility, of.system)}
            comes={comesThrough(week.stretches, facility)}
          />
          <Fold title="The chart as tables">
            <WeakTable
              site={site}
              facility={facility}
              rows={alikeStretches(week.stretches)}
              caption="The hours of the week in order, each with the fault case that leaves least to spare."
            />
            <CoverTable points={points} />
          </Fold>
        </>
      )}
      <Lost lost={week.lost} />
    </figure>
  );
}

function leastSaid(leastS: number): string {
  return `Least of the week: ${spareSaid(leastS)}.`;
}

/** Fault cases that whoever comes is too late for at every hour: they ask for a safeguard, not for another rota. */
function Lost({ lost }: { lost: CoverOfSystem['claimed']['lost'] }) {
  if (lost.length === 0) return null;
  return (
    <Fold title={`${lost.length} that nobody comes in time for at any hour`}>
      <p>
        The curve leaves these out, unless there are no others. Most of them ask for a safeguard rather than for other
        people.
      </p>
      <ul>
        {lost.map(({ id, title, verdict, bestS }) => (
          <li key={id}>
            {title}: <VerdictMark verdict={verdict} />, at best {spareSaid(bestS)}
          </li>
        ))}
      </ul>
    </Fold>
  );
}
