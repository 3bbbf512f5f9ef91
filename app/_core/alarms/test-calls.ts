/** Test calls: when somebody is due one, and how it stands with reaching them. */
import type { Instant } from '../time/zone';
import { isQuiet, type QuietHours } from './steps';

/** What is known of reaching somebody; ms since 1970. */
export interface Reached {
  /** Their newest test call, and when they answered it; null: not yet, or never. */
  test: { madeMs: number; answeredMs: number | null } | null;
  /** When they last answered any test. */
  answeredMs: number | null;
  /** When they last acknowledged an alarm of which they had been told; null: never. */
  alarmMs: number | null;
}

export type ReachState = 'reached' | 'asked' | 'missed' | 'long-ago' | 'never';

/** ms for which a test call waits for its answer. */
export const TEST_RUNS_MS = 86_400_000;
/** Hours of the day in which nobody is taken to sleep who says nothing else. Common practice, no source. */
const WAKING = { from: '09:00', to: '18:00' };
const DAY_MS = 86_400_000;

/** When somebody was last reached, by a test or by an alarm; null: never. */
export function lastReached({ answeredMs, alarmMs }: Reached): number | null {
  return answeredMs === null || alarmMs === null ? (answeredMs ?? alarmMs) : Math.max(answeredMs, alarmMs);
}

/** How it stands with reaching somebody. @param eachDays days for which having been reached counts */
export function reachState(reached: Reached, nowMs: Instant, eachDays: number): ReachState {
  const { test } = reached;
  const last = lastReached(reached);
  const isOpen = test !== null && test.answeredMs === null && (last === null || last < test.madeMs);
  if (isOpen) return nowMs - test.madeMs < TEST_RUNS_MS ? 'asked' : 'missed';
  if (last === null) return 'never';
  return nowMs - last <= eachDays * DAY_MS ? 'reached' : 'long-ago';
}

/**
 * Whether somebody is to be called for a test now: so many days after they were last reached, and each day again while they
 * miss it, in hours in which they are awake.
 *
 * @param time   of day at the site, HH:MM
 */
export function isTestDue(
  reached: Reached,
  { nowMs, time, eachDays, quiet }: { nowMs: Instant; time: string; eachDays: number; quiet?: QuietHours | undefined },
): boolean {
  if (!isQuiet(WAKING, time) || (quiet !== undefined && isQuiet(quiet, time))) return false;
  const { test } = reached;
  if (test !== null && nowMs - test.madeMs < TEST_RUNS_MS) return false;
  return reachState(reached, nowMs, eachDays) !== 'reached';
}
