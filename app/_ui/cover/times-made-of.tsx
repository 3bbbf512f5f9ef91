import Link from '../frame/link';
import { takenAsAble } from '#core/rota/able';
import { DEFAULTS } from '#core/equipment/defaults';
import type { Facility } from '#core/facility/facility';
import type { Figure } from '#core/facility/figure';
import { siteAddress } from '../frame/site-address';

/** Where the parts of a time to put right come from. */
export function TimesMadeOf({ facility, site: key }: { facility: Facility; site: string }) {
  const { site, people } = facility;
  const open = takenAsAble(facility).map(({ work }) => work);
  const undescribed = people.filter(({ travelMin }) => typeof travelMin?.value !== 'number').map(({ name }) => name);
  return (
    <ul>
      <li>Notice: when an alarm is raised or a round shows it, by the course of the fault in the review.</li>
      <li>To answer on site: {figureSaid(site.answerOnSiteMin, DEFAULTS.answerOnSiteMin)}.</li>
      <li>To answer and leave home, on call: {figureSaid(site.answerOnCallMin, DEFAULTS.answerOnCallMin)}.</li>
      {(site.answerOnSiteNightMin ?? site.answerOnCallNightMin) ? (
        <li>
          By night, 22:00 to 07:00: on site {nightSaid(site.answerOnSiteNightMin)}; on call{' '}
          {nightSaid(site.answerOnCallNightMin)}.
        </li>
      ) : (
        <li>By night as by day: ten answers of each are needed to tell them apart, or somebody states them.</li>
      )}
      <li>
        The way: as described of each person
        {undescribed.length > 0 ? `; ${undescribed.join(', ')}: ${DEFAULTS.travelMin.value} min, default` : ''}. The{' '}
        <Link href={`${siteAddress(key, 'rota')}#people`}>rota</Link> has them all.
      </li>
      <li>
        The work: as described of the equipment, else the default for its type. A spare is taken to lie on site where
        the equipment says no time to get one.
      </li>
      {open.length > 0 ? (
        <li>
          Who may do it: everybody on the rota, also {open.join(', ')}, which usually only trained people do: no
          competence of the site asks for it.
        </li>
      ) : (
        <li>Who may do it: for equipment that a competence of the site asks for, only those who have it.</li>
      )}
    </ul>
  );
}

function nightSaid(figure: Figure | undefined): string {
  return typeof figure?.value === 'number' ? `${figure.value} min, ${figure.source ?? figure.origin}` : 'as by day';
}

function figureSaid(figure: Figure | undefined, usual: { value: number; source: string }): string {
  if (typeof figure?.value !== 'number') return `${usual.value} min, default (${usual.source})`;
  return `${figure.value} min, ${figure.source ?? figure.origin}`;
}
