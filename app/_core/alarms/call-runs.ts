import { groupBy } from '../group-by';
import type { Channel } from './channels';
import type { ToTell } from './to-tell';
import { type Attempt, type CallState, callState } from './told';

/** Somebody who was to be told once, by one way, and what was tried. */
export interface CallMade {
  accountId: string;
  channel: Channel;
  why: ToTell['why'];
  /** How often the alarm had called anew by then. */
  again: number;
  /** ms since 1970. */
  madeMs: number;
  /** In the order they were made, with what was said of each. */
  attempts: readonly (Attempt & { detail: string | null })[];
}

/** Calls by one way that ended alike, one after another, of one person or of several who were called together. */
export interface CallRun extends Pick<CallMade, 'channel' | 'why' | 'again'> {
  accountIds: string[];
  state: CallState;
  /** What was said of the last attempt; null where nothing was. */
  detail: string | null;
  /** Whether the same person was called since in the same way: nothing more is tried for these. */
  isCalledSince: boolean;
  /** When the first and the last of them were made, ms since 1970. */
  fromMs: number;
  toMs: number;
  times: number;
}

/**
 * Calls as a page shows them: repeats that ended alike are one, from when to when and how often, and people for whom all of that
 * is the same stand together, so that a night of repeats can be read. One that failed is never one with another that did not, and what was said of each failure stays.
 *
 * @param calls          in any order
 * @param acknowledged   whether somebody has acknowledged the alarm
 * @returns              the newest first; of one instant in the order they were given
 */
export function callRuns(calls: readonly CallMade[], acknowledged: boolean): CallRun[] {
  const runs: CallRun[] = [];
  const newest = new Map<string, CallRun>();
  for (const call of calls.toSorted((a, b) => a.madeMs - b.madeMs)) {
    const { accountId, channel, again } = call;
    const way = `${accountId} ${channel} ${again}`;
    const before = newest.get(way);
    const run = runOf(call, acknowledged);
    if (before && isAlike(before, run)) {
      before.toMs = run.toMs;
      before.times += 1;
    } else {
      if (before) before.isCalledSince = true;
      newest.set(way, run);
      runs.push(run);
    }
  }
  return together(runs).sort((a, b) => b.toMs - a.toMs);
}

/** Those of several people that are the same in all but whose they are, as one. */
function together(runs: readonly CallRun[]): CallRun[] {
  const alike = groupBy(runs, ({ accountIds: _whose, ...run }) => JSON.stringify(run));
  return [...alike.values()].flatMap(([first, ...others]) =>
    first ? [{ ...first, accountIds: [first, ...others].flatMap(({ accountIds }) => accountIds) }] : [],
  );
}

function runOf({ accountId, channel, why, again, madeMs, attempts }: CallMade, acknowledged: boolean): CallRun {
  const state = callState(attempts, acknowledged);
  const detail = attempts.at(-1)?.detail ?? null;
  const of = { accountIds: [accountId], channel, why, again };
  return { ...of, state, detail, isCalledSince: false, fromMs: madeMs, toMs: madeMs, times: 1 };
}

function isAlike(one: CallRun, other: CallRun): boolean {
  return one.why === other.why && one.state === other.state && one.detail === other.detail;
}
