import 'server-only';

/** min by which the clock of a logger may be ahead; common practice, no source. */
const AHEAD_MIN = 5;

/** The last instant at which a reading can have been taken, ms since 1970, for what is looked at now. */
export function latestTaken(now: Date): number {
  return now.getTime() + AHEAD_MIN * 60_000;
}
