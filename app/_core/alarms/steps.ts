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

/** Whether a time of day lies within hours that begin and end so. @param time HH:MM on the wall clock */
export function isQuiet({ from, to }: QuietHours, time: string): boolean {
  return from < to ? from <= time && time < to : from <= time || time < to;
}
