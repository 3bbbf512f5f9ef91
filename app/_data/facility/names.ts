import 'server-only';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';
import type { Member } from './members';
import { NOUNS } from './nouns';

/** What stands where a name was erased. */
export const ERASED = 'name erased';

/**
 * Ids of the names of persons that a facility mentions; a name that is new to the site is added. Duties, tests and the
 * record hold the id alone, so that a name can be erased in one place.
 *
 * @param members   the things of the facility
 * @returns         id by name
 */
export async function nameIdsOf(
  tx: Transaction,
  siteId: string,
  members: readonly Member[],
): Promise<ReadonlyMap<string, string>> {
  const wanted = new Set(members.flatMap(mentioned));
  const found = await tx.personName.findMany({ where: { siteId, name: { in: [...wanted] } } });
  const ids = new Map(found.flatMap(({ id, name }) => (name === null ? [] : [[name, id] as const])));
  const missing = [...wanted].filter((name) => !ids.has(name)).map((name) => ({ siteId, id: newId(), name }));
  await tx.personName.createMany({ data: missing });
  for (const { id, name } of missing) ids.set(name, id);
  return ids;
}

function mentioned({ table, fields, tests = [] }: Member): string[] {
  const inFields = Object.keys(NOUNS[table].names).map((field) => fields[field]);
  return [...inFields, ...tests.map(({ by }) => by)].filter((name) => typeof name === 'string');
}

/** Id of the name of a person at a site; a name that is new to the site is added. */
export async function nameIdFor(tx: Transaction, siteId: string, name: string): Promise<string> {
  const found = await tx.personName.findUnique({ where: { siteId_name: { siteId, name } } });
  if (found) return found.id;
  const id = newId();
  await tx.personName.create({ data: { siteId, id, name } });
  return id;
}
