import 'server-only';
import type { Role } from '#core/rota/rota';
import { database } from '../client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';
import { noteEvent } from './events';
import { endLinks } from './links';
import { endSessions, type Way } from './sessions';

/** Somebody who may sign in, or once could. */
export interface Account {
  id: string;
  /** In lower case; null once erased. */
  email: string | null;
  name: string | null;
  everywhere: Role | null;
  isDemo: boolean;
  endedAt: Date | null;
}

const ENTRY = { id: true, email: true, name: true, everywhere: true, isDemo: true, endedAt: true } as const;

/** An address as it is kept and compared. */
export function emailKey(email: string): string {
  return email.normalize('NFKC').trim().toLowerCase();
}

/** The account of this id. */
export async function findAccount(id: string): Promise<Account | null> {
  return asAccount(await database().account.findUnique({ where: { id }, select: ENTRY }));
}

/** The account with this e-mail address, in any spelling. */
export async function findAccountByEmail(email: string): Promise<Account | null> {
  return asAccount(await database().account.findUnique({ where: { email: emailKey(email) }, select: ENTRY }));
}

/** What is kept of the password of an account that has not ended; null when it has none, or there is no such account. */
export async function findPasswordHash(accountId: string): Promise<string | null> {
  const found = await database().account.findFirst({
    where: { id: accountId, endedAt: null },
    select: { passwordHash: true },
  });
  return found?.passwordHash ?? null;
}

/** Whether anybody but a person of the demonstration has, or had, an account. */
export async function isSetUp(tx: Pick<Transaction, 'account'> = database()): Promise<boolean> {
  return (await tx.account.findFirst({ where: { isDemo: false }, select: { id: true } })) !== null;
}

/** How an account begins. */
export interface NewAccount {
  email: string;
  name: string;
  passwordHash?: string | null;
  everywhere?: Role | null;
  isDemo?: boolean;
}

/**
 * Makes an account.
 *
 * @param by   account that makes it, `local`, or null when it makes itself by the set-up link
 * @returns    its id; null when the address has one already
 */
export async function makeAccount(
  tx: Transaction,
  { email, name, passwordHash = null, everywhere = null, isDemo = false }: NewAccount,
  by: string | null,
  at: Date,
): Promise<string | null> {
  const id = newId();
  const row = { id, email: emailKey(email), name: name.trim(), passwordHash, everywhere, isDemo, createdAt: at };
  const { count } = await tx.account.createMany({ data: [row], skipDuplicates: true });
  if (count === 0) return null;
  await noteEvent(tx, { kind: 'account-made', accountId: id, by: by ?? id, detail: { everywhere, demo: isDemo } }, at);
  return id;
}

/**
 * Gives an account another password. Every other session of it ends, and links made for it lead nowhere: whoever had the old
 * one, or was shown a link, is out.
 *
 * @param by       account that sets it
 * @param except   session that goes on, if any
 */
export async function setPassword(
  tx: Transaction,
  { accountId, passwordHash, by, except = null }: PasswordChange,
  at: Date,
): Promise<void> {
  await tx.account.update({ where: { id: accountId }, data: { passwordHash } });
  await noteEvent(tx, { kind: 'password-set', accountId, by }, at);
  await endSessions(tx, { accountId, by, except }, at);
  await endLinks(tx, accountId, at);
}

/** What `setPassword` is told. */
export interface PasswordChange {
  accountId: string;
  passwordHash: string;
  by: string;
  except?: string | null;
}

/** Notes that somebody did not get in: the account they named, if there is one, and nothing that they typed. */
export async function noteFailure({ accountId, way }: { accountId: string | null; way: Way }, at: Date): Promise<void> {
  await noteEvent(database(), { kind: 'sign-in-failed', accountId, by: null, detail: { way } }, at);
}

/** Keeps the same password under stronger parameters; nothing else changes. */
export async function rehashPassword(accountId: string, before: string, after: string): Promise<void> {
  await database().account.updateMany({
    where: { id: accountId, passwordHash: before },
    data: { passwordHash: after },
  });
}

/**
 * Ends an account: it signs in no more, its sessions end, and links made for it lead nowhere. The row stays, since the
 * record speaks of it. Roles at sites are ended by whoever keeps the record of the site.
 *
 * @param by   account that ends it, or `local`
 * @returns    false when it had ended before, or there is none
 */
export async function endAccount(tx: Transaction, accountId: string, by: string, at: Date): Promise<boolean> {
  const { count } = await tx.account.updateMany({ where: { id: accountId, endedAt: null }, data: { endedAt: at } });
  if (count === 0) return false;
  await noteEvent(tx, { kind: 'account-ended', accountId, by }, at);
  await endSessions(tx, { accountId, by }, at);
  await endLinks(tx, accountId, at);
  // Nothing of a site is told to a device of somebody who has left.
  await tx.pushDevice.deleteMany({ where: { accountId } });
  return true;
}

/** Whether somebody has anything to sign in by: a password, a passkey, or who they are at an outside issuer. */
export async function canSignIn(tx: Transaction, accountId: string): Promise<boolean> {
  const { passwordHash, _count: has } = await tx.account.findUniqueOrThrow({
    where: { id: accountId },
    select: { passwordHash: true, _count: { select: { passkeys: true, outside: true } } },
  });
  return passwordHash !== null || has.passkeys + has.outside > 0;
}

/**
 * Lets somebody whose account had ended sign in again. They prove anew who they are, and may do nothing until somebody
 * says so: what they signed in by and a role at every site are gone.
 *
 * @param by   account that does it, or `local`
 */
export async function reopenAccount(tx: Transaction, accountId: string, by: string, at: Date): Promise<void> {
  await tx.account.update({ where: { id: accountId }, data: { endedAt: null, passwordHash: null, everywhere: null } });
  await tx.passkey.deleteMany({ where: { accountId } });
  await tx.outsideIdentity.deleteMany({ where: { accountId } });
  await noteEvent(tx, { kind: 'account-reopened', accountId, by }, at);
}

/** The database admits no other role (a check stands in the migration). */
function asAccount(row: (Omit<Account, 'everywhere'> & { everywhere: string | null }) | null): Account | null {
  return row && { ...row, everywhere: row.everywhere as Role | null };
}
