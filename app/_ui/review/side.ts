import type { Verdict } from '#core/review/result';
import { lasting } from '../words/lasting';

/** Verdicts under which something is harmed, so that there is a time to spare, or none. */
const HARMED: ReadonlySet<Verdict> = new Set(['no-warning', 'too-late', 'some-hours', 'covered']);

/** The time to spare of one side of a change, in words; empty where nothing is harmed. */
export function spareOf({ verdict, spareS }: { verdict: Verdict; spareS: number | null }): string {
  if (!HARMED.has(verdict)) return '';
  if (spareS === null) return 'nobody puts it right';
  return spareS < 0 ? `short by ${lasting(spareS)}` : `${lasting(spareS)} to spare`;
}
