import 'server-only';
import { type Link, NO_SEAL, seal } from './seal';

/** A link as it is kept, with its seals. */
export interface KeptLink extends Link {
  prevHash: Uint8Array;
  hash: Uint8Array;
}

/** The first link that is not as it was written, and what is wrong with it. */
export interface Broken {
  isWhole: false;
  seq: number;
  wrong: 'missing' | 'not linked to the one before' | 'not as it was sealed';
}

/**
 * Works every seal of a record out again, from its first link to the one its head names.
 *
 * @param links   every link up to the head, in order
 * @param head    number and seal of the last link; null when nothing was ever recorded
 * @returns       null when every link is as it was written
 */
export async function firstBroken(
  links: AsyncIterable<KeptLink>,
  head: { seq: number; hash: Uint8Array } | null,
): Promise<Broken | null> {
  const last = head?.seq ?? 0;
  let before: Uint8Array = NO_SEAL;
  let seq = 0;
  for await (const link of links) {
    seq += 1;
    if (link.seq !== seq) return { isWhole: false, seq, wrong: 'missing' };
    if (!isSame(link.prevHash, before)) return { isWhole: false, seq, wrong: 'not linked to the one before' };
    if (!isSame(link.hash, seal(before, link))) return { isWhole: false, seq, wrong: 'not as it was sealed' };
    before = link.hash;
  }
  if (seq < last) return { isWhole: false, seq: seq + 1, wrong: 'missing' };
  return head && !isSame(head.hash, before) ? { isWhole: false, seq, wrong: 'not as it was sealed' } : null;
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return Buffer.compare(a, b) === 0;
}
