import 'server-only';
import { namesAt } from '#data/incidents/people';
import type { Transaction } from '#data/transaction';

/** Parts of a name shorter than this are words of their own too often. */
const SHORTEST = 4;

/**
 * A name of somebody at the site that stands in a text: a whole name of several words however it is written, or one word of
 * it written as a name. A robin in a text is a bird, Robin is not.
 *
 * @returns   what stands there; null when nobody is named
 */
export async function namesIn(tx: Transaction, siteId: string, text: string): Promise<string | null> {
  for (const name of await namesAt(tx, siteId)) {
    const words = name.split(/\s+/);
    if (words.length > 1 && stands(name.toLowerCase(), text.toLowerCase())) return name;
    const part = words.find((word) => word.length >= SHORTEST && stands(word, text));
    if (part !== undefined) return part;
  }
  return null;
}

/** Whether words stand in a text with no letter right before or after them. */
function stands(words: string, text: string): boolean {
  const literal = words.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<!\\p{L})${literal}(?!\\p{L})`, 'u').test(text);
}
