import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import { appendRecords } from '../records/append-records';
import { inTransaction, type Transaction } from '../transaction';
import { makeAccount, setPassword } from './accounts';

/** Somebody of the demonstration: their role is the same at each of its sites. */
export interface DemoPerson {
  role: Role;
  name: string;
  email: string;
  passwordHash: string;
}

/** Whether anybody of the demonstration can sign in: those of its rotas have accounts that nobody signs in to. */
export async function hasDemoAccounts(): Promise<boolean> {
  return (
    (await database().account.findFirst({
      where: { isDemo: true, endedAt: null, passwordHash: { not: null } },
      select: { id: true },
    })) !== null
  );
}

/**
 * Gives somebody of the demonstration an account with their role at each of its sites, or a new password if they have one.
 *
 * @param by   account that does it, or `local`
 */
export async function keepDemoPerson({ role, ...person }: DemoPerson, by: string, at: Date): Promise<void> {
  const { email, passwordHash } = person;
  await inTransaction(async (tx) => {
    const id = await makeAccount(tx, { ...person, isDemo: true }, by, at);
    if (id === null) {
      const { id: accountId } = await tx.account.findUniqueOrThrow({ where: { email, isDemo: true } });
      return await setPassword(tx, { accountId, passwordHash, by }, at);
    }
    const sites = await tx.site.findMany({ where: { isDemo: true }, select: { id: true }, orderBy: { id: 'asc' } });
    for (const { id: siteId } of sites) {
      await tx.membership.create({ data: { siteId, accountId: id, role, since: at } });
      await appendRecords(tx, siteId, [{ kind: 'member-let-in', body: { by, account: id, role } }], at);
    }
  });
}

/** Somebody of the rota of a demonstration's site. */
export interface RotaPerson {
  siteId: string;
  email: string;
  name: string;
  role: Role;
  personId: string;
}

/**
 * Gives somebody of a demonstration's rota an account to be known by. It has no way to sign in.
 *
 * @param by   account that does it, or `local`
 * @returns    its id
 */
export async function keepRotaAccount(
  tx: Transaction,
  { siteId, email, name, role, personId }: RotaPerson,
  by: string,
  at: Date,
): Promise<string> {
  const made = await makeAccount(tx, { email, name, isDemo: true }, by, at);
  const { id: accountId } = await tx.account.findUniqueOrThrow({ where: { email, isDemo: true } });
  await tx.membership.create({ data: { siteId, accountId, role, personId, since: at } });
  return made ?? accountId;
}
