import 'server-only';
import {
  generateAuthenticationOptions,
  type PublicKeyCredentialRequestOptionsJSON,
  type VerifiedAuthenticationResponse,
  verifyAuthenticationResponse,
} from '@simplewebauthn/server';
import { z } from 'zod';
import { ok, type Result, refused } from '#core/result';
import { noteFailure } from '#data/accounts/accounts';
import { keepChallenge, takeChallenge } from '#data/accounts/challenges';
import { mayOnceMore } from '#data/accounts/tries';
import { type Credential, countPasskey, findCredential } from '#data/accounts/passkeys';
import { passkeySignInRequest } from '#shape/accounts/passkey';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { type Entered, enter } from './enter';
import { type PasskeyPlace, passkeyPlace } from './passkey-place';

/** Nothing has to be said to be asked for a passkey. */
export const askPasskeyShape = z.object({});
export const passkeySignInShape = passkeySignInRequest;

const HOUR_S = 3600;
/** Times an hour that one address may ask for a challenge, and answer one: none can be guessed, but each leaves a row. */
const TIMES = 300;
const TOO_OFTEN: Refusal = { why: 'too-often', waitS: HOUR_S };

type Answer = z.output<typeof passkeySignInShape>['answer'];

/** Asks a browser for any passkey of this place: who somebody is, their key says. */
export async function askPasskey(visit: Visit): Promise<Result<PublicKeyCredentialRequestOptionsJSON, Refusal>> {
  const place = passkeyPlace(visit.origin);
  if (!place) return refused({ why: 'not-allowed' });
  if (!(await mayOnceMore('passkey-asked', visit.address, TIMES, HOUR_S))) return refused(TOO_OFTEN);
  const options = await generateAuthenticationOptions({ rpID: place.rpID, userVerification: 'required' });
  await keepChallenge(options.challenge, null, now());
  return ok(options);
}

/** Signs in by the answer of a passkey to a challenge of ours, which is good once. */
export async function signInByPasskey(
  visit: Visit,
  { answer, to }: z.output<typeof passkeySignInShape>,
): Promise<Result<Entered, Refusal>> {
  if (!(await mayOnceMore('passkey-answered', visit.address, TIMES, HOUR_S))) return refused(TOO_OFTEN);
  const place = passkeyPlace(visit.origin);
  const credential = await findCredential(answer.id);
  const proof = place && credential ? await proofOf(answer, place, credential) : null;
  if (!credential || !proof?.verified) {
    await noteFailure({ accountId: credential?.accountId ?? null, way: 'passkey' }, now());
    return refused({ why: 'wrong-sign-in' });
  }
  await countPasskey(credential.id, proof.authenticationInfo.newCounter, now());
  return ok(await enter(visit, { accountId: credential.accountId, way: 'passkey', to }));
}

/** What the library finds: the key, the place, the challenge, that the person was there, and that the count went on. */
async function proofOf(
  answer: Answer,
  place: PasskeyPlace,
  { id, publicKey, counter }: Credential,
): Promise<VerifiedAuthenticationResponse | null> {
  try {
    return await verifyAuthenticationResponse({
      response: { ...answer, response: { ...answer.response } },
      expectedChallenge: (challenge) => takeChallenge(challenge, null, now()),
      expectedOrigin: place.expectedOrigin,
      expectedRPID: place.rpID,
      credential: { id, publicKey, counter },
      requireUserVerification: true,
    });
  } catch {
    return null;
  }
}
