import type { Instant } from '../time/zone';
import { type Entry, MARKS, type MarkName, type Source } from './incident';
import { newestBy, standing } from './story';

/** A mark as it stands. */
export interface Mark {
  mark: MarkName;
  /** When; for a fault that began at some time between two, the earliest. */
  atMs: Instant;
  /** The latest it can have been; the same where it is known. */
  latestMs: Instant;
  source: Source;
  /** Whether somebody entered it, or the record says so by itself. */
  entered: boolean;
  /** In words where it comes from; null where nothing was said. */
  from: string | null;
}

/** What the record says by itself of a mark. */
export type Proposal = Pick<Mark, 'mark' | 'atMs' | 'source'> & { from: string };

/**
 * The marks in their order. One that somebody entered stands before one that the record proposes; of several proposals the
 * earliest is meant. Pressing that something was isolated, or that air was put on, proposes that hands were on.
 *
 * @param proposals   what the rest of the record says
 */
export function marksOf(entries: readonly Entry[], proposals: readonly Proposal[]): Mark[] {
  const entered = newestBy(standing(entries, 'mark'), ({ body }) => body?.mark ?? '');
  const proposed = [...proposals, ...pressed(entries)];
  return MARKS.flatMap((mark): Mark[] => {
    const by = entered.get(mark);
    if (by?.body) {
      const { latest, source, note } = by.body;
      return [
        {
          mark,
          atMs: by.atMs,
          latestMs: Math.max(by.atMs, latest ?? by.atMs),
          source,
          entered: true,
          from: note ?? null,
        },
      ];
    }
    const [first] = proposed.filter((one) => one.mark === mark).sort((a, b) => a.atMs - b.atMs);
    return first ? [{ ...first, latestMs: first.atMs, entered: false }] : [];
  });
}

const HANDS: ReadonlySet<string> = new Set(['isolate', 'air-on', 'dosing-off']);

/** What the first things done say of the marks. */
function pressed(entries: readonly Entry[]): Proposal[] {
  return standing(entries, 'step')
    .filter(({ body }) => body.notDone === undefined && HANDS.has(body.step))
    .map(({ atMs }) => ({ mark: 'hands-on', atMs, source: 'witness', from: 'the first step that was pressed' }));
}
