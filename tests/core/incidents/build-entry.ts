import type { Bodies, Entry, EntryKind } from '#core/incidents/incident';

let count = 0;

/** An id that sorts by when it was made. */
export function entryId(): string {
  count += 1;
  return `00000000-0000-7000-8000-${String(count).padStart(12, '0')}`;
}

/** The minute of a morning, ms. @param clock "07:14" */
export function at(clock: string): number {
  return Date.parse(`2026-11-25T${clock}:00Z`);
}

/** An entry; written down when it happened unless something else is given. */
export function entry<K extends EntryKind>(
  kind: K,
  clock: string,
  body: Bodies[K] | null,
  more: Partial<Pick<Entry, 'id' | 'by' | 'recordedMs' | 'supersedes' | 'reason' | 'atMs'>> = {},
): Entry {
  const atMs = at(clock);
  return {
    id: entryId(),
    kind,
    atMs,
    recordedMs: atMs,
    by: 'account-1',
    body,
    supersedes: null,
    reason: null,
    ...more,
  } as Entry;
}

/** A mark that somebody entered. @param latest "07:14" */
export function mark(name: Bodies['mark']['mark'], clock: string, latest?: string): Entry {
  const body = { mark: name, source: 'witness' as const, ...(latest === undefined ? {} : { latest: at(latest) }) };
  return entry('mark', clock, body);
}
