import 'server-only';
import { database } from '../client';
import { inTransaction } from '../transaction';
import { noteEvent } from './events';

/** A passkey as its person sees it. */
export interface PasskeyEntry {
  /** Id of the credential, base64url. */
  id: string;
  name: string;
  createdAt: Date;
  usedAt: Date | null;
}

/** What a passkey proves itself by. */
export interface Credential {
  id: string;
  accountId: string;
  publicKey: Uint8Array<ArrayBuffer>;
  counter: number;
  transports: string[];
}

/** The passkeys of an account, in the order they were added. */
export async function listPasskeys(accountId: string): Promise<(PasskeyEntry & { transports: string[] })[]> {
  return await database().passkey.findMany({
    where: { accountId },
    select: { id: true, name: true, createdAt: true, usedAt: true, transports: true },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  });
}

/** The passkey of this id, if its account may sign in. */
export async function findCredential(id: string): Promise<Credential | null> {
  const found = await database().passkey.findFirst({
    where: { id, account: { endedAt: null } },
    select: { id: true, accountId: true, publicKey: true, counter: true, transports: true },
  });
  return found && { ...found, counter: Number(found.counter) };
}

/** Adds a passkey to an account. @returns false when it is known already */
export async function addPasskey(credential: Credential & { name: string }, at: Date): Promise<boolean> {
  const { accountId } = credential;
  return await inTransaction(async (tx) => {
    const row = { ...credential, counter: BigInt(credential.counter), createdAt: at };
    const { count } = await tx.passkey.createMany({ data: [row], skipDuplicates: true });
    if (count > 0) await noteEvent(tx, { kind: 'passkey-added', accountId, by: accountId }, at);
    return count > 0;
  });
}

/** Notes that a passkey was used, and how often by its own count. */
export async function countPasskey(id: string, counter: number, at: Date): Promise<void> {
  await database().passkey.update({ where: { id }, data: { counter: BigInt(counter), usedAt: at } });
}

/** Gives a passkey of an account another name. @returns whether there is one */
export async function namePasskey(accountId: string, id: string, name: string): Promise<boolean> {
  return (await database().passkey.updateMany({ where: { id, accountId }, data: { name } })).count > 0;
}

/** Removes a passkey of an account. @returns whether there was one */
export async function removePasskey(accountId: string, id: string, at: Date): Promise<boolean> {
  return await inTransaction(async (tx) => {
    const { count } = await tx.passkey.deleteMany({ where: { id, accountId } });
    if (count > 0) await noteEvent(tx, { kind: 'passkey-removed', accountId, by: accountId }, at);
    return count > 0;
  });
}
