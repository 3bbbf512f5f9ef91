import 'server-only';
import type { Entry, Source } from '#core/incidents/incident';
import type { Mark } from '#core/incidents/marks';
import type { TimelineLine } from '#core/incidents/timeline';
import { entrySaid, MARK_WORDS } from '#core/incidents/words';
import type { StoryView } from '../find-incident-at';

/** Kinds that happened; what was concluded afterwards stands in the investigation. */
const HAPPENED: ReadonlySet<Entry['kind']> = new Set(['step', 'sample', 'measurement', 'log', 'loss']);

/** The entries of an incident that tell what happened and stand. */
export function entryLines(story: readonly StoryView[], called: ReadonlyMap<string, string>): TimelineLine[] {
  return story
    .filter(({ entry, isSuperseded }) => HAPPENED.has(entry.kind) && !isSuperseded && entry.body !== null)
    .map(({ entry, who, isAfterSigning }) => ({
      id: entry.id,
      atMs: entry.atMs,
      topic: 'entry',
      what: `${entrySaid(entry, called)}${isAfterSigning ? ' (written after it was signed)' : ''}`,
      who,
      source: sourceOf(entry),
      ...(entry.kind === 'measurement' && entry.body ? { figures: entry.body.figures } : {}),
      ...(entry.kind === 'loss' ? { isAbnormal: true } : {}),
    }));
}

/** The marks, each where it stands. */
export function markLines(marks: readonly Mark[]): TimelineLine[] {
  return marks.map(({ mark, atMs, latestMs, source, from, entered }) => ({
    id: `mark-${mark}`,
    atMs,
    topic: 'mark',
    what: `${MARK_WORDS[mark]}${latestMs > atMs ? ', at the earliest' : ''}${from ? ` (${from})` : entered ? '' : ' (from the record)'}`,
    who: null,
    source,
  }));
}

function sourceOf(entry: Entry): Source {
  return entry.kind === 'log' && entry.body ? entry.body.source : 'witness';
}
