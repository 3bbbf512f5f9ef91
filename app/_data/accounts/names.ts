import 'server-only';
import { database } from '../client';

/** Stands in the record for whoever sat at the machine itself, with its command line. */
export const LOCAL = 'local';
/** What they are called. */
export const LOCAL_NAME = 'the machine itself';
const ERASED_WORDS = 'name erased';

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/**
 * What to call those who did something, by what the record holds of them.
 *
 * @param ids   ids of accounts, or `local`
 * @returns     a name for each id that was given
 */
export async function accountNames(ids: Iterable<string>): Promise<ReadonlyMap<string, string>> {
  const wanted = new Set(ids);
  const names = new Map([...wanted].map((id) => [id, id === LOCAL ? LOCAL_NAME : ERASED_WORDS]));
  const known = [...wanted].filter((id) => UUID.test(id));
  if (known.length === 0) return names;
  const accounts = await database().account.findMany({
    where: { id: { in: known } },
    select: { id: true, name: true, email: true },
  });
  for (const { id, name, email } of accounts) names.set(id, name ?? email ?? ERASED_WORDS);
  return names;
}
