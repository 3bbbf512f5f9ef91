import { isSetBack } from '../time/set-back';
import type { Condition } from './condition';
import type { Seen, Watch } from './is-true';

/**
 * Whether a reading is older than the newest one held to, and changes nothing therefore. Where that one was held to by a clock
 * that has been set back since, nothing is known of which is older, and what comes now counts.
 *
 * @param lastMs   when the newest one held to was taken; null: none was
 */
export function isOlder(lastMs: number | null | undefined, { atMs, cameMs }: Pick<Seen, 'atMs' | 'cameMs'>): boolean {
  return lastMs != null && atMs < lastMs && !isSetBack(lastMs, cameMs);
}

/**
 * An alarm after the clock on the wall was set back. Only silence goes by that clock: what it waits for is not put off by it.
 *
 * @param byMs   how far it was set back
 */
export function setBack(condition: Condition, watch: Watch, byMs: number): Watch {
  if (condition.kind !== 'silence') return watch;
  const { sinceMs, dueMs, lastMs } = watch;
  const moved = (ms: number | null) => (ms === null ? null : ms - byMs);
  return { ...watch, sinceMs: sinceMs - byMs, dueMs: moved(dueMs), lastMs: moved(lastMs) };
}
