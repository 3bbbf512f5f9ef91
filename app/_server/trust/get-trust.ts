import 'server-only';
import { z } from 'zod';
import { ok, type Result } from '#core/result';
import { wholeAddress } from '../calls/address';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { ownAuthority, titleOf } from './own-authority';

/** Nothing has to be said to ask whom to trust. */
export const getTrustShape = z.undefined();

/** How a device comes to trust this machine. */
export interface Trust {
  /** Where people reach Holdfast. */
  address: string;
  /** Where this page stands in the clear, for who does not trust it yet. */
  door: string;
  authority: {
    /** What it is called in the list of a phone. */
    title: string;
    /** Of SHA-256, and the shorter one of SHA-1 that some systems show: pairs of hexadecimal digits. */
    fingerprint: string;
    shortFingerprint: string;
    /** Day its time is over, in UTC. */
    until: string;
  } | null;
}

/** Whom a device has to trust to reach this Holdfast encrypted; nobody where its certificate is known to all. */
export async function getTrust(_visit: Visit): Promise<Result<Trust, Refusal>> {
  const address = new URL(wholeAddress('/')).origin;
  const door = new URL('/trust', address.replace(/^https:/, 'http:')).href;
  const own = ownAuthority();
  const authority = own && {
    title: titleOf(own),
    fingerprint: own.fingerprint256,
    shortFingerprint: own.fingerprint,
    until: new Date(own.validTo).toISOString().slice(0, 10),
  };
  return ok({ address, door, authority });
}
