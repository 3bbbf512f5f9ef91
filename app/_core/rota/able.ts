import type { Facility } from '../facility/facility';
import type { EquipmentType } from '../facility/system';
import { mayPutRight } from './competence';
import type { Able } from './cover';
import usual from './usual-competences.json';

/**
 * Who may put a type of equipment right on a day.
 *
 * @param type   null for work that is no repair of equipment
 * @param on     "YYYY-MM-DD"
 * @returns      null where no competence of the site asks for it: then everybody may
 */
export function ableTo(
  { people, site: { competences = [] } }: Pick<Facility, 'people' | 'site'>,
  type: EquipmentType | null,
  on: string,
): Able | null {
  if (type === null || !competences.some(({ types = [] }) => types.includes(type))) return null;
  const able = new Set(people.filter((person) => mayPutRight(person, type, competences, on)).map(({ key }) => key));
  return (person) => able.has(person);
}

/** Work that usually only trained people do, though no competence of the site asks for it: everybody is taken as able. */
export function takenAsAble({
  site,
  systems,
}: Pick<Facility, 'site' | 'systems'>): { type: EquipmentType; work: string }[] {
  const asked = new Set((site.competences ?? []).flatMap(({ types = [] }) => types));
  const there = new Set(systems.flatMap(({ equipment }) => equipment.map(({ type }) => type)));
  return Object.entries(usual.types).flatMap(([type, work]) => {
    const own = type as EquipmentType;
    return there.has(own) && !asked.has(own) ? [{ type: own, work }] : [];
  });
}
