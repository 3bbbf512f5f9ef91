import 'server-only';
import { accountNames } from '../accounts/names';
import { database } from '../client';

/** Names of accounts and of people of a site's rota, by id; of one that was erased there is none. */
export async function namesOf(siteId: string, ids: readonly string[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const [accounts, people] = await Promise.all([
    accountNames(ids),
    database().person.findMany({
      where: { siteId, id: { in: ids.filter((id) => UUID.test(id)) } },
      select: { id: true, name: { select: { name: true } } },
    }),
  ]);
  const named = people.flatMap(({ id, name: { name } }) => (name === null ? [] : [[id, name] as const]));
  return new Map([...accounts, ...named]);
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Ids of the people of a site's rota by key. */
export async function personIds(siteId: string): Promise<Map<string, string>> {
  const rows = await database().person.findMany({
    where: { siteId, retiredAt: null },
    select: { id: true, key: true },
  });
  return new Map(rows.map(({ id, key }) => [key, id]));
}
