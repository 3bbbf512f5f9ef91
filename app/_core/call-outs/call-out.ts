/**
 * What this room knows: how somebody who goes in alone is watched over by a clock, and when others are called.
 * What it leaves out: who they are, which the rota says, and whether anybody is safe, which only a person says.
 * Where the numbers come from: common practice in working alone, no source.
 */

/** What becomes of a call-out, in the order it happened. Times in ms since 1970. */
export type CallOutEvent =
  | { kind: 'extended'; atMs: number; untilMs: number }
  /** Whoever went in was reminded that the time is nearly over. */
  | { kind: 'reminded'; atMs: number }
  /** Somebody is called; steps are counted from 1, anew each time more time is taken. */
  | { kind: 'overdue'; atMs: number; step: number }
  /** Somebody who was called looks after it. */
  | { kind: 'seen-to'; atMs: number }
  | { kind: 'back'; atMs: number };

/** How it stands with somebody who went in alone. */
export interface CallOutStanding {
  state: 'out' | 'overdue' | 'back';
  /** When they want to be back, or wanted to. */
  untilMs: number;
  /** How often more time was taken. */
  again: number;
  /** Step that was called last since then; 0: nobody was. */
  step: number;
  /** Whether somebody looks after it since that step. */
  isSeenTo: boolean;
  /** When the next step is called; null once they are back. */
  nextMs: number | null;
}

/** min from one step to the next. Common practice, no source. */
export const STEP_MIN = 10;
/** min for which somebody who looks after it is left alone, before the next are called. Common practice, no source. */
export const SEEN_TO_MIN = 20;
/** min before their time is over at which whoever went in is reminded. Common practice, no source. */
export const REMIND_MIN = 5;
/** min that are offered to begin with, or in addition; an hour at most before anybody hears of it again. */
export const OFFERED_MIN = [15, 30, 60] as const;

const MIN_MS = 60_000;

/**
 * How it stands at an instant. It ends by a person's word alone: steps go on, step after step, for as long as nobody says that
 * they are back.
 *
 * @param firstMs   when they wanted to be back at first, ms since 1970
 * @param events    in the order they happened
 * @param nowMs     ms since 1970
 */
export function callOutAt(firstMs: number, events: readonly CallOutEvent[], nowMs: number): CallOutStanding {
  const since = events.findLastIndex(({ kind }) => kind === 'extended');
  const extended = events.filter((event) => event.kind === 'extended');
  const untilMs = extended.at(-1)?.untilMs ?? firstMs;
  const later = events.slice(since + 1);
  const called = later.filter((event) => event.kind === 'overdue').at(-1);
  const seen = later.filter((event) => event.kind === 'seen-to').at(-1);
  const known = { untilMs, again: extended.length, step: called?.step ?? 0 };
  if (events.some(({ kind }) => kind === 'back')) return { ...known, state: 'back', isSeenTo: false, nextMs: null };
  const isSeenTo = seen !== undefined && seen.atMs >= (called?.atMs ?? 0);
  const steppedMs = called === undefined ? untilMs : called.atMs + STEP_MIN * MIN_MS;
  const nextMs = isSeenTo ? Math.max(steppedMs, seen.atMs + SEEN_TO_MIN * MIN_MS) : steppedMs;
  return { ...known, state: nowMs >= untilMs ? 'overdue' : 'out', isSeenTo, nextMs };
}

/**
 * When whoever went in alone is to be reminded that their time is nearly over; null once they were, or are back.
 *
 * @param firstMs   when they wanted to be back at first, ms since 1970
 * @param events    in the order they happened
 */
export function reminderAt(firstMs: number, events: readonly CallOutEvent[]): number | null {
  const since = events.findLastIndex(({ kind }) => kind === 'extended');
  const last = events[since];
  if (events.slice(since + 1).some(({ kind }) => kind === 'reminded' || kind === 'back')) return null;
  return (last?.kind === 'extended' ? last.untilMs : firstMs) - REMIND_MIN * MIN_MS;
}
