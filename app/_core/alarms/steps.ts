/** In which order people are called for one alarm, and how long each has. */

/**
 * Whom a step calls: whoever is on, on site and on call alike, or one of the two; the leads; the managers; or everyone: whoever
 * is on, leads and managers.
 */
export const STEP_WHOM = ['on', 'on-site', 'on-call', 'lead', 'manager', 'everyone'] as const;
export type StepWhom = (typeof STEP_WHOM)[number];

/** One step of calls. */
export interface CallStep {
  whom: StepWhom;
  /** Minutes from the alarm being raised, while nobody acknowledges. */
  afterMin: number;
}

/** Hours of the day during which somebody sleeps, local wall-clock times; `to` at or before `from` is the next day. */
export interface QuietHours {
  from: string;
  to: string;
}

/** What a site does that says nothing else. Common practice, no source. */
export const USUAL_STEPS: readonly CallStep[] = [
  { whom: 'on', afterMin: 0 },
  { whom: 'lead', afterMin: 15 },
  { whom: 'everyone', afterMin: 30 },
];

/**
 * Minutes from the last step of calls to the same once more, while nobody acknowledges, where a site says nothing else. Common
 * practice, no source.
 */
export const REPEAT_CALLS_MIN = 15;

/** Days from one test call of a person to the next where a site says nothing else. Common practice, no source. */
export const TEST_CALL_EACH_DAYS = 28;

/**
 * When a step is due.
 *
 * @param step       counted from 1
 * @param secondMin  minutes to the second step that an alarm has for itself; later steps keep their distance from it
 * @returns          minutes from the alarm being raised; null when there is no such step
 */
export function dueAfterMin(steps: readonly CallStep[], step: number, secondMin?: number): number | null {
  const own = steps[step - 1];
  if (!own) return null;
  const [, second] = steps;
  const shift = step === 1 || secondMin === undefined || !second ? 0 : secondMin - second.afterMin;
  return Math.max(0, own.afterMin + shift);
}

/** How a site calls, as it is described. */
export interface WaysOfCalling {
  callSteps?: readonly CallStep[] | undefined;
  repeatCallsMin?: number | undefined;
}

/** Whether a step, counted from 1, is the last one repeated. */
export function isRepeat({ callSteps = USUAL_STEPS }: WaysOfCalling, step: number): boolean {
  return step > callSteps.length;
}

/**
 * When people are called next of an alarm that nobody acknowledges. A step has its time from the alarm's first call, whenever
 * it was taken; the last one is repeated from when it was taken, so that nothing is caught up on after a time without a worker.
 *
 * @param step       the one that was taken just now, counted from 1; beyond the last it is that one repeated
 * @param calledMs   when it called first, ms since 1970
 * @param atMs       when the step was taken
 * @returns          ms since 1970
 */
export function calledNextMs(
  { callSteps = USUAL_STEPS, repeatCallsMin = REPEAT_CALLS_MIN }: WaysOfCalling,
  step: number,
  { calledMs, atMs, secondMin }: { calledMs: number; atMs: number; secondMin?: number | undefined },
): number {
  const min = dueAfterMin(callSteps, step + 1, secondMin);
  return min === null ? atMs + repeatCallsMin * 60_000 : calledMs + min * 60_000;
}

/** Whether a time of day lies within hours that begin and end so. @param time HH:MM on the wall clock */
export function isQuiet({ from, to }: QuietHours, time: string): boolean {
  return from < to ? from <= time && time < to : from <= time || time < to;
}
