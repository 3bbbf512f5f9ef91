import 'server-only';
import type { Facility } from '#core/facility/facility';
import { keepRotaAccount } from '#data/accounts/demo';
import type { Transaction } from '#data/transaction';
import type { ToldEntry } from './told';

/**
 * Gives everybody of a demonstration's rota an account with their role, so that what they did has somebody who did it. Nobody
 * signs in to them: they have no password, and no link is made.
 *
 * @param by   account that does it, or `local`
 * @returns    account by key of the person
 */
export async function keepPeople(
  tx: Transaction,
  siteId: string,
  { site, people }: Facility,
  { by, at, idOf, told }: { by: string; at: Date; idOf: (key: string) => string; told: ToldEntry[] },
): Promise<ReadonlyMap<string, string>> {
  const accounts = new Map<string, string>();
  for (const { key, name, role } of people) {
    const email = `${key}@${site.key}.example`;
    const account = await keepRotaAccount(tx, { siteId, email, name, role, personId: idOf(key) }, by, at);
    accounts.set(key, account);
    told.push({ at, kind: 'member-let-in', body: { by, account, role } });
  }
  return accounts;
}
