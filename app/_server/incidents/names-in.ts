import 'server-only';
import { namesAt } from '#data/incidents/people';
import type { Transaction } from '#data/transaction';

/** Parts of a name shorter than this are words of their own too often. */
const SHORTEST = 4;

/**
 * A name of somebody at the site that stands in a text: the whole of it, or a part, written as a name.
 *
 * @returns   the name as it stands there; null when there is none
 */
export async function namesIn(tx: Transaction, siteId: string, text: string): Promise<string | null> {
  const names = await namesAt(tx, siteId);
  const words = new Set(text.split(/[^\p{L}'’-]+/u));
  for (const name of names) {
    if (text.toLowerCase().includes(name.toLowerCase())) return name;
    const part = name.split(/\s+/).find((one) => one.length >= SHORTEST && words.has(one));
    if (part !== undefined) return part;
  }
  return null;
}
