/**
 * The fourth of four questions: were they told? A mail server that takes a message has not shown it to anybody: a person
 * counts as reached when somebody acknowledges, and by nothing else.
 */
import { isSetBack } from '../time/set-back';

/** One attempt to tell somebody. */
export interface Attempt {
  /** ms since 1970. */
  atMs: number;
  /** The mail server took it; it failed; or there is no way at all, no mail set up or no address. */
  result: 'taken' | 'failed' | 'no-way';
}

/**
 * How it stands with telling somebody. Once somebody has acknowledged, nobody else is told: who was not yet is `not-needed`,
 * and whoever could not be is not tried again, `given-up`.
 */
export type CallState = 'waiting' | 'taken' | 'failing' | 'no-way' | 'not-needed' | 'given-up';

/** s from one attempt to the next, the first from when the call was made. Common practice, no source. */
const PAUSES_S = [0, 5, 15, 45, 120] as const;
/** s between all further attempts: a mail server may be away for hours. Common practice, no source. */
const LATER_S = 600;

/**
 * How a call stands.
 *
 * @param attempts       in the order they were made
 * @param acknowledged   whether somebody has acknowledged the alarm
 */
export function callState(attempts: readonly Attempt[], acknowledged: boolean): CallState {
  if (attempts.some(({ result }) => result === 'taken')) return 'taken';
  const last = attempts.at(-1);
  if (acknowledged) return last ? 'given-up' : 'not-needed';
  if (!last) return 'waiting';
  return last.result === 'no-way' ? 'no-way' : 'failing';
}

/**
 * Whether somebody is to be told now. What was noted by a clock that has been set back since puts nothing off.
 *
 * @param madeMs   when the call was made, ms since 1970
 * @param nowMs    the present
 */
export function isDue(madeMs: number, attempts: readonly Attempt[], nowMs: number): boolean {
  const dueMs = nextAttempt(madeMs, attempts);
  return dueMs !== null && (dueMs <= nowMs || isSetBack(attempts.at(-1)?.atMs ?? madeMs, nowMs));
}

/**
 * When somebody is to be told again, or at first. It goes on for as long as it is asked: until the alarm is acknowledged.
 *
 * @param madeMs   when the call was made, ms since 1970
 * @returns        ms since 1970; null when a mail server took it
 */
export function nextAttempt(madeMs: number, attempts: readonly Attempt[]): number | null {
  const state = callState(attempts, false);
  if (state === 'taken') return null;
  const lastMs = attempts.at(-1)?.atMs ?? madeMs;
  // Where there is no way, one may be made any time: an address entered, a mail server named.
  const pauseS = state === 'no-way' ? LATER_S : (PAUSES_S[attempts.length] ?? LATER_S);
  return lastMs + pauseS * 1000;
}
