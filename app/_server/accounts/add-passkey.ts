import 'server-only';
import { headers } from 'next/headers';
import {
  generateRegistrationOptions,
  type PublicKeyCredentialCreationOptionsJSON,
  type RegistrationResponseJSON,
  verifyRegistrationResponse,
} from '@simplewebauthn/server';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { findAccount } from '#data/accounts/accounts';
import { keepChallenge, takeChallenge } from '#data/accounts/challenges';
import { addPasskey as keepPasskey, listPasskeys } from '#data/accounts/passkeys';
import { listSessions } from '#data/accounts/sessions';
import { newPasskeyRequest } from '#shape/accounts/passkey';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import { visitOf } from '../gate/visit';
import type { Who } from '../gate/who';
import { type PasskeyPlace, passkeyPlace } from '../sign-in/passkey-place';

/** Nothing has to be said to be asked for a new passkey. */
export const offerPasskeyShape = z.object({});
export const addPasskeyShape = newPasskeyRequest;

/** ms since the sign-in within which a way in is added (OWASP ASVS 5.0, 7.5). How long is common practice, no source. */
const FRESH_MS = 15 * 60_000;
const SIGN_IN_ANEW: Refusal = {
  why: 'conflict',
  now: 'You signed in a while ago: sign out and in again, then add the passkey. So nobody else adds one at a browser you left open.',
};

/**
 * Asks a browser to make a passkey for whoever is signed in: one that finds its account by itself, and checks its person.
 * Only soon after the sign-in: whoever finds a session is not to make it last for ever.
 */
export async function offerPasskey(who: Who): Promise<Result<PublicKeyCredentialCreationOptionsJSON, Refusal>> {
  if (!(await isFresh(who))) return refused(SIGN_IN_ANEW);
  const place = await placeNow();
  const account = await findAccount(who.id);
  if (!place || !account) return refused({ why: 'not-allowed' });
  const options = await generateRegistrationOptions({
    rpName: 'Holdfast',
    rpID: place.rpID,
    userID: new TextEncoder().encode(who.id),
    userName: account.email ?? who.name,
    userDisplayName: who.name,
    attestationType: 'none',
    excludeCredentials: (await listPasskeys(who.id)).map(({ id }) => ({ id })),
    authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
  });
  await keepChallenge(options.challenge, who.id, now());
  return ok(options);
}

/** Adds a passkey that was made in answer to a challenge of ours, which is good once. */
export async function addPasskey(
  who: Who,
  { name, answer }: z.output<typeof addPasskeyShape>,
): Promise<Result<true, Refusal>> {
  const place = await placeNow();
  const made = place && (await verified(who, place, answer as RegistrationResponseJSON));
  if (!made) return refused({ why: 'wrong-sign-in' });
  const { id, publicKey, counter } = made.credential;
  const transports = answer.response.transports ?? [];
  const kept = await keepPasskey({ id, accountId: who.id, publicKey, counter, transports, name }, now());
  return kept ? ok(true) : refused({ why: 'conflict', now: 'This passkey is known already.' });
}

async function isFresh({ id, session }: Who): Promise<boolean> {
  const at = now();
  const own = (await listSessions(id, at)).find((one) => one.id === session);
  return own !== undefined && at.getTime() - own.createdAt.getTime() <= FRESH_MS;
}

async function placeNow(): Promise<PasskeyPlace | null> {
  const visit = visitOf(await headers());
  return visit && passkeyPlace(visit.origin);
}

async function verified(who: Who, place: PasskeyPlace, response: RegistrationResponseJSON) {
  try {
    const { verified: isGood, registrationInfo } = await verifyRegistrationResponse({
      response,
      expectedChallenge: (challenge) => takeChallenge(challenge, who.id, now()),
      expectedOrigin: place.expectedOrigin,
      expectedRPID: place.rpID,
      requireUserVerification: true,
    });
    return isGood ? registrationInfo : null;
  } catch {
    return null;
  }
}
