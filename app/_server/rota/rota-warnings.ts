import 'server-only';
import type { Facility } from '#core/facility/facility';
import { lackingOn } from '#core/rota/lacking';
import type { Span } from '#core/rota/nobody';
import type { Rota } from '#core/rota/turns';
import { atTwoSites, type TwoSites } from '#core/rota/two-sites';
import { findElsewhere } from '#data/rota/elsewhere';
import { findSiteById } from '#data/sites';
import { may } from '../gate/may';
import type { Who } from '../gate/who';
import { now } from '../clock';
import { dayIn } from '../local-day';
import { storedSite } from '../reviews/stored-site';
import { rotaOf } from './rota-of';

/** A competence that nobody who is on has at some time, and who has it at all, by name. */
export interface LackingSaid {
  name: string;
  holders: string[];
  spans: Span[];
}

/** Somebody who is on at another site at the same time; the other's name, when whoever asks may see it. */
export interface TwoSitesSaid extends Omit<TwoSites, 'site'> {
  name: string;
  site: string | null;
}

/** Competences of a site that are lacking in a stretch of time, and until when each person has what. */
export function lackingSaid(facility: Facility, rota: Rota, from: number, to: number): LackingSaid[] {
  const { competences = [] } = facility.site;
  return lackingOn(rota, competences, from, to).map(({ competence, spans }) => ({
    name: competences.find(({ key }) => key === competence)?.name ?? competence,
    holders: facility.people
      .filter((person) => person.competences?.some((one) => one.competence === competence))
      .map(({ name }) => name),
    spans,
  }));
}

/** Who of a site is on at another one at the same time, in a stretch of time. */
export async function twoSitesSaid(
  who: Who,
  { siteId, facility, rota }: { siteId: string; facility: Facility; rota: Rota },
  from: number,
  to: number,
): Promise<TwoSitesSaid[]> {
  const found: TwoSitesSaid[] = [];
  for (const { person, siteId: other, there } of await findElsewhere(siteId)) {
    const entry = await findSiteById(other);
    const stored = entry && (await storedSite(entry, dayIn(entry.zone, now())));
    if (!(stored && entry)) continue;
    const wayMin = wayBetween(facility, stored.facility);
    const elsewhere = { site: entry.key, person: there, rota: await rotaOf(other, stored.facility, from), wayMin };
    const name = facility.people.find(({ key }) => key === person)?.name ?? person;
    const site = may(who, 'see', entry.key) ? entry.name : null;
    for (const one of atTwoSites({ rota, person }, [elsewhere], from, to)) found.push({ ...one, name, site });
  }
  return found;
}

/** Minutes between two sites, as either says; where both do, the longer. */
function wayBetween({ site: here }: Facility, { site: there }: Facility): number | null {
  const said = [
    here.waysTo?.find(({ site }) => site === there.key),
    there.waysTo?.find(({ site }) => site === here.key),
  ].flatMap((way) => (way ? [way.min] : []));
  return said.length > 0 ? Math.max(...said) : null;
}
