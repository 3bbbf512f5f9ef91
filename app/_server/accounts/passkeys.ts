import 'server-only';
import type { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { namePasskey as keepName, removePasskey as forget } from '#data/accounts/passkeys';
import { namePasskeyRequest, passkeyRequest } from '#shape/accounts/passkey';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';

export const namePasskeyShape = namePasskeyRequest;
export const removePasskeyShape = passkeyRequest;

/** Gives a passkey of one's own another name. */
export async function namePasskey(
  who: Who,
  { id, name }: z.output<typeof namePasskeyShape>,
): Promise<Result<true, Refusal>> {
  return (await keepName(who.id, id, name)) ? ok(true) : refused({ why: 'not-found', what: 'passkey' });
}

/** Removes a passkey of one's own: nobody signs in by it any more. */
export async function removePasskey(
  who: Who,
  { id }: z.output<typeof removePasskeyShape>,
): Promise<Result<true, Refusal>> {
  return (await forget(who.id, id, now())) ? ok(true) : refused({ why: 'not-found', what: 'passkey' });
}
