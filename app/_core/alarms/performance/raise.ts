/** How many alarms there are, how they come and how they are answered over some weeks: not whether any one of them was right. */

/** One time that an alarm was raised. Instants in ms since 1970. */
export interface Raise {
  /** Id of the alarm. */
  alarm: string;
  raisedMs: number;
  returnedMs: number | null;
  acknowledgedMs: number | null;
  /** The one somebody chose for the alarm, else the one the review proposed, as it was then; null: neither was. */
  priority: string | null;
  /** Accounts that were called for it, and when first. */
  told: { account: string; atMs: number }[];
}

/** A stretch of time, ms since 1970, its end not counted. */
export interface Period {
  fromMs: number;
  toMs: number;
}

export const TEN_MIN_MS = 600_000;
export const HOUR_MS = 3_600_000;
export const DAY_MS = 86_400_000;
