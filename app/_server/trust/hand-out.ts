import 'server-only';
import { z } from 'zod';
import { ok, refused, type Result } from '#core/result';
import type { Refusal } from '../gate/refusal';
import type { Visit } from '../gate/visit';
import { mobileConfig } from './mobile-config';
import { ownAuthority } from './own-authority';

/** By which name the authority is asked for. */
export const handOutShape = z.object({ file: z.enum(['holdfast.crt', 'holdfast.mobileconfig']) });

/** A file a device takes to trust this machine. */
export interface HandedOut {
  name: string;
  /** Media type. */
  type: string;
  content: Uint8Array<ArrayBuffer>;
}

/** The authority's certificate, as it is (DER) or in a profile; `not-found` where there is none. */
export async function handOut(
  _visit: Visit,
  { file }: z.output<typeof handOutShape>,
): Promise<Result<HandedOut, Refusal>> {
  const authority = ownAuthority();
  if (!authority) return refused({ why: 'not-found', what: 'link' });
  return ok(
    file === 'holdfast.crt'
      ? { name: file, type: 'application/x-x509-ca-cert', content: Uint8Array.from(authority.raw) }
      : { name: file, type: 'application/x-apple-aspen-config', content: Buffer.from(mobileConfig(authority), 'utf8') },
  );
}
