import type { Bodies, Entry, EntryKind, EntryOf } from './incident';

/** An entry that holds something. */
export type Standing<K extends EntryKind> = EntryOf<K> & { body: Bodies[K] };

/** One line of the story: an entry, and the one that took its place, if any. */
export interface StoryLine {
  entry: Entry;
  supersededBy: Entry | null;
}

/**
 * Order of entries: when it happened, then when it was written down, then by id. Whatever order they are read in, the story
 * is the same.
 */
function byTime(a: Entry, b: Entry): number {
  return a.atMs - b.atMs || a.recordedMs - b.recordedMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** Order in which entries were written down. */
export function byRecorded(a: Entry, b: Entry): number {
  return a.recordedMs - b.recordedMs || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** Every entry in the order in which it happened, corrected ones with what took their place. */
export function storyOf(entries: readonly Entry[]): StoryLine[] {
  const later = new Map(entries.flatMap((entry) => (entry.supersedes === null ? [] : [[entry.supersedes, entry]])));
  return [...entries].sort(byTime).map((entry) => ({ entry, supersededBy: later.get(entry.id) ?? null }));
}

/** The entries of one kind that stand: neither corrected nor taken back, in the order in which they happened. */
export function standing<K extends EntryKind>(entries: readonly Entry[], kind: K): Standing<K>[] {
  const gone = new Set(entries.map(({ supersedes }) => supersedes));
  return entries
    .filter((entry) => entry.kind === kind && entry.body !== null && !gone.has(entry.id))
    .sort(byTime) as unknown as Standing<K>[];
}

/** Of entries that say the same thing anew, the one written last stands for each key. */
export function newestBy<T extends Entry>(entries: readonly T[], keyOf: (entry: T) => string): Map<string, T> {
  return new Map([...entries].sort(byRecorded).map((entry) => [keyOf(entry), entry]));
}
