import 'server-only';
import type { Prisma } from '../../../prisma/generated/client';
import { newId } from '../new-id';
import type { Transaction } from '../transaction';

/** What is done with accounts outside any site. */
export type AccountEventKind =
  | 'account-made'
  | 'account-ended'
  | 'account-reopened'
  | 'account-erased'
  | 'signed-in'
  | 'sign-in-failed'
  | 'signed-out'
  | 'session-ended'
  | 'sessions-ended'
  | 'link-made'
  | 'link-used'
  | 'password-set'
  | 'passkey-added'
  | 'passkey-removed'
  | 'push-device-added'
  | 'push-device-removed'
  | 'outside-identity-linked';

/** Something done with an account. */
export interface AccountEvent {
  kind: AccountEventKind;
  /** Whose account; null when there is none, as for a failed sign-in. */
  accountId: string | null;
  /** Account that did it, or `local`; null when nobody is known. */
  by: string | null;
  /** What goes with it: never a password, a token, a name, or what a person typed. */
  detail?: Record<string, string | number | boolean | null>;
}

/**
 * Adds to what was done with accounts. It is never changed nor removed.
 *
 * @param tx   the transaction of the change, or the client itself where nothing is changed
 * @param at   the instant
 */
export async function noteEvent(
  tx: Pick<Transaction, 'accountEvent'>,
  { kind, accountId, by, detail = {} }: AccountEvent,
  at: Date,
): Promise<void> {
  const data: Prisma.AccountEventCreateInput = { id: newId(), at, kind, accountId, by, detail };
  await tx.accountEvent.create({ data });
}
