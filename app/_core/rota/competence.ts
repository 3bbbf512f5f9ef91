import type { EquipmentType } from '../facility/system';
import type { Competence, Person } from './rota';

/** Whether a competence counts for somebody on a day. @param on "YYYY-MM-DD" */
export function holds({ competences = [] }: Pick<Person, 'competences'>, competence: string, on: string): boolean {
  return competences.some((one) => one.competence === competence && (one.until === undefined || on <= one.until));
}

/**
 * Whether somebody may put a type of equipment right on a day: they have every competence of the site that asks for it.
 * @param competences those of the site
 * @param on "YYYY-MM-DD"
 */
export function mayPutRight(
  person: Pick<Person, 'competences'>,
  type: EquipmentType,
  competences: readonly Competence[],
  on: string,
): boolean {
  return competences.every(({ key, types = [] }) => !types.includes(type) || holds(person, key, on));
}
