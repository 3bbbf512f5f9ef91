import 'server-only';

/** Streams that somebody may have open at once, in each web process: a tab has one. Common practice, no source. */
const MOST_EACH = 40;

/** One count for the whole process: the web server may load this file once a bundle. */
const kept: typeof globalThis & { holdfastStreams?: Map<string, number> } = globalThis;
kept.holdfastStreams ??= new Map();
const open = kept.holdfastStreams;

/**
 * Counts a stream that somebody opens: each takes memory for as long as it is open, and nobody must be able to take all of it.
 *
 * @param account   whose it is
 * @returns         to be called once when it ends; null when they have too many open
 */
export function openStream(account: string): (() => void) | null {
  const own = open.get(account) ?? 0;
  if (own >= MOST_EACH) return null;
  open.set(account, own + 1);
  let isOpen = true;
  return () => {
    if (!isOpen) return;
    isOpen = false;
    const left = (open.get(account) ?? 1) - 1;
    if (left > 0) open.set(account, left);
    else open.delete(account);
  };
}
