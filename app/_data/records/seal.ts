import 'server-only';
import { createHash } from 'node:crypto';
import { canonicalText } from '../canonical';

/** What happened at a site, in words of ours and values that hold no name of a person. */
export interface RecordEntry {
  kind: string;
  body: Record<string, unknown>;
}

/** A link of a site's record before it is sealed. */
export interface Link extends RecordEntry {
  siteId: string;
  /** Counted from 1. */
  seq: number;
  at: Date;
}

/** Stands before the first link: 32 bytes of nothing. */
export const NO_SEAL: Uint8Array<ArrayBuffer> = new Uint8Array(32);

/**
 * The seal of a link: SHA-256 over the seal before it and the one text of the link. Whoever changes, removes, adds or
 * moves a link breaks every seal from there on.
 *
 * @param before   seal of the link before, 32 bytes
 * @param link     the link
 * @returns        32 bytes
 */
export function seal(before: Uint8Array, { siteId, seq, at, kind, body }: Link): Uint8Array<ArrayBuffer> {
  const text = canonicalText([siteId, seq, at.toISOString(), kind, body]);
  return new Uint8Array(createHash('sha256').update(before).update(text, 'utf8').digest());
}
