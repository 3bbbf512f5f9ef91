import 'server-only';
import { Prisma } from '../../../prisma/generated/client';
import { database } from '../client';
import { ERASED } from '../facility/names';

/** Tables of things with a name of their own. */
const NAMED = [
  'alarm_definition',
  'circuit',
  'equipment',
  'monitor',
  'person_name',
  'reading_source',
  'room',
  'round_sheet',
  'round_slot',
  'safeguard',
  'sensor',
  'system',
  'tank',
];

/**
 * What things of a site are called, retired ones too, and persons of its rota: one question, however many they are.
 *
 * @param ids   as they stand in the record
 * @returns     name by id; an id that is of nothing at this site has none
 */
export async function thingNames(siteId: string, ids: Iterable<string>): Promise<ReadonlyMap<string, string>> {
  const wanted = [...new Set(ids)];
  if (wanted.length === 0) return new Map();
  const parts = NAMED.map(
    (table) => Prisma.sql`
      SELECT id, name FROM ${Prisma.raw(table)} WHERE site_id = ${siteId}::uuid AND id = ANY(${wanted}::uuid[])`,
  );
  const people = Prisma.sql`
      SELECT p.id, n.name FROM person p JOIN person_name n ON n.site_id = p.site_id AND n.id = p.name_id
       WHERE p.site_id = ${siteId}::uuid AND p.id = ANY(${wanted}::uuid[])`;
  const found = await database().$queryRaw<{ id: string; name: string | null }[]>(
    Prisma.join([...parts, people], ' UNION ALL '),
  );
  return new Map(found.map(({ id, name }) => [id, name ?? ERASED]));
}
