import Link from 'next/link';
import { DEFAULTS } from '#core/equipment/defaults';
import type { Facility } from '#core/facility/facility';
import type { Figure } from '#core/facility/figure';
import { siteAddress } from '../frame/site-address';

/** Where the parts of a time to put right come from. */
export function TimesMadeOf({ facility: { site, people }, site: key }: { facility: Facility; site: string }) {
  const undescribed = people.filter(({ travelMin }) => typeof travelMin?.value !== 'number').map(({ name }) => name);
  return (
    <ul>
      <li>Notice: when an alarm is raised or a round shows it, by the course of the fault in the review.</li>
      <li>To answer on site: {figureSaid(site.answerOnSiteMin, DEFAULTS.answerOnSiteMin)}.</li>
      <li>To answer and leave home, on call: {figureSaid(site.answerOnCallMin, DEFAULTS.answerOnCallMin)}.</li>
      <li>
        The way: as described of each person
        {undescribed.length > 0 ? `; ${undescribed.join(', ')}: ${DEFAULTS.travelMin.value} min, default` : ''}. The{' '}
        <Link href={`${siteAddress(key, 'rota')}#people`}>rota</Link> has them all.
      </li>
      <li>The work: as described of the equipment, else the default for its type.</li>
    </ul>
  );
}

function figureSaid(figure: Figure | undefined, usual: { value: number; source: string }): string {
  if (typeof figure?.value !== 'number') return `${usual.value} min, default (${usual.source})`;
  return `${figure.value} min, ${figure.source ?? figure.origin}`;
}
