/** Lowest and highest value of something. */
export interface Swing {
  low: number;
  high: number;
}

/** On which side of a value an alarm is true. */
export type LimitSide = 'above' | 'below';

/** What a limit has to come before: in one fault case, on its side. */
export interface Demand {
  /** Id of the fault case. */
  case: string;
  /**
   * The value that is reached while there is still time for everything: a limit on the near side of it calls soon enough.
   * null: there is not the time, at whatever value it calls.
   */
  value: number | null;
}

/** A limit as it follows from the time that people need. */
export interface Proposal {
  /** The strictest that any case demands; null: none does. */
  value: number | null;
  /** The case that demands it. */
  case: string | null;
  /** Cases in which no limit would be early enough. */
  hopeless: string[];
}

/**
 * The limit that is early enough in every case in which one can be, set backwards from the last chance.
 *
 * @param side   on which side the alarm is true
 */
export function proposeLimit(side: LimitSide, demands: readonly Demand[]): Proposal {
  let strictest: { value: number; case: string } | null = null;
  for (const { case: id, value } of demands) {
    if (value === null) continue;
    const isStricter = strictest === null || (side === 'above' ? value < strictest.value : value > strictest.value);
    if (isStricter) strictest = { value, case: id };
  }
  return {
    value: strictest?.value ?? null,
    case: strictest?.case ?? null,
    hopeless: demands.filter(({ value }) => value === null).map(({ case: id }) => id),
  };
}

/**
 * The value that is reached while there is still time: the farthest that a course has gone by then, since a limit calls when
 * it is passed for the first time.
 *
 * @param valueAt   of the course, s after the onset
 * @param latestS   last s at which the limit may be passed; below 0: there is no time at all
 * @returns         null when there is no time, or the course has not moved to this side by then
 */
export function valueInTime(
  side: LimitSide,
  valueAt: (t: number) => number,
  latestS: number,
  stepS = 300,
): number | null {
  if (latestS < 0) return null;
  const from = valueAt(0);
  let farthest = from;
  const pieces = Math.max(1, Math.ceil(latestS / stepS));
  for (let k = 1; k <= pieces; k++) {
    const value = valueAt((latestS * k) / pieces);
    if (side === 'above' ? value > farthest : value < farthest) farthest = value;
  }
  return farthest === from ? null : farthest;
}

/** Whether a limit lies within what a healthy system does by itself. */
export function isWithin(side: LimitSide, limit: number, { low, high }: Swing): boolean {
  return side === 'above' ? limit < high : limit > low;
}
