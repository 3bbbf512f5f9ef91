import 'server-only';
import { headers } from 'next/headers';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { findAccount, findPasswordHash } from '#data/accounts/accounts';
import { listPasskeys, type PasskeyEntry } from '#data/accounts/passkeys';
import { listSessions, type SessionEntry } from '#data/accounts/sessions';
import { findPushKeys } from '#data/calls/push-keys';
import { listPushDevices, type PushDevice } from '#data/calls/push-devices';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { visitOf } from '../gate/visit';
import type { Who } from '../gate/who';
import { passkeyPlace } from '../sign-in/passkey-place';

/** Nothing has to be said to ask for one's own account. */
export const getAccountShape = z.undefined();

/** One's own account. */
export interface OwnAccount {
  name: string;
  email: string | null;
  hasPassword: boolean;
  sessions: (SessionEntry & { isThis: boolean })[];
  passkeys: PasskeyEntry[];
  /** Whether a passkey can be made at the address that this browser came to. */
  canAddPasskey: boolean;
  /** Browsers that take calls, and the key a new one is given: the worker makes it at its first start. */
  devices: PushDevice[];
  pushKey: string | null;
}

/** The account of whoever is signed in, with the browsers they are signed in by. */
export async function getAccount(who: Who): Promise<Result<OwnAccount, Refusal>> {
  const account = await findAccount(who.id);
  if (!account) return refused({ why: 'not-found', what: 'account' });
  const [sessions, passkeys, hash, devices, keys] = await Promise.all([
    listSessions(who.id, now()),
    listPasskeys(who.id),
    findPasswordHash(who.id),
    listPushDevices(who.id),
    findPushKeys(),
  ]);
  const visit = visitOf(await headers());
  return ok({
    name: who.name,
    email: account.email,
    hasPassword: hash !== null,
    sessions: sessions.map((session) => ({ ...session, isThis: session.id === who.session })),
    passkeys: passkeys.map(({ id, name, createdAt, usedAt }) => ({ id, name, createdAt, usedAt })),
    canAddPasskey: visit !== null && passkeyPlace(visit.origin) !== null,
    devices,
    pushKey: keys?.publicKey ?? null,
  });
}
