import 'server-only';
import { database } from '../client';
import { inTransaction } from '../transaction';
import { noteEvent } from './events';

/** Somebody as an outside issuer knows them. */
export interface OutsidePerson {
  issuer: string;
  /** Their id there, which never changes. */
  subject: string;
  /** Their address, if the issuer vouches for it. */
  email: string | null;
}

/**
 * The account of somebody an outside issuer vouches for: the one they came to before, else the one with their address, which
 * is theirs from then on. Nobody gets an account by this.
 *
 * @returns   its id; null when there is none that may sign in
 */
export async function findOutsideAccount({ issuer, subject, email }: OutsidePerson, at: Date): Promise<string | null> {
  const known = await database().outsideIdentity.findUnique({
    where: { issuer_subject: { issuer, subject } },
    select: { accountId: true, account: { select: { endedAt: true } } },
  });
  if (known) return known.account.endedAt === null ? known.accountId : null;
  if (email === null) return null;
  return await inTransaction(async (tx) => {
    const account = await tx.account.findFirst({ where: { email, endedAt: null }, select: { id: true } });
    if (!account) return null;
    const accountId = account.id;
    // Somebody else of the same issuer is it already: an address that was given on is not a way in.
    const other = await tx.outsideIdentity.findFirst({ where: { accountId, issuer } });
    if (other) return null;
    await tx.outsideIdentity.create({ data: { issuer, subject, accountId, linkedAt: at } });
    await noteEvent(tx, { kind: 'outside-identity-linked', accountId, by: accountId, detail: { issuer } }, at);
    return accountId;
  });
}
