import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { isMailConfigured } from '../mail/send-mail';
import { outsideIssuer } from './outside-options';
import { passkeyPlace } from './passkey-place';

/** Nothing has to be said to ask how one gets in. */
export const waysInShape = z.undefined();

/** How one may sign in, besides by a password. */
export interface WaysIn {
  passkey: boolean;
  /** What the outside issuer is called; null without one. */
  outside: string | null;
  /** Whether a link to a new password can be sent. */
  mail: boolean;
}

/** The ways in at the address that this browser came to. */
export async function waysIn(visit: Visit): Promise<Result<WaysIn, Refusal>> {
  return ok({
    passkey: passkeyPlace(visit.origin) !== null,
    outside: outsideIssuer()?.name ?? null,
    mail: isMailConfigured(),
  });
}
