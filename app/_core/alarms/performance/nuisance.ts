import { groupBy } from '../../group-by';
import { DAY_MS, type Raise } from './raise';

/** Three times or more within a minute (common practice after ISA-18.2; another source has more than five turns in five minutes). */
const CHATTERS = { times: 3, withinMs: 60_000 };
/** Gone within ten seconds, and not back within a minute. */
const FLEETS = { goneMs: 10_000, backMs: 60_000 };

/** How often an alarm did something that no alarm should. */
export interface Often {
  alarm: string;
  times: number;
}

/** Alarms that came three times or more within a minute, and in how many such stretches. */
export function chattering(raises: readonly Raise[]): Often[] {
  return eachAlarm(raises, (times) => {
    let stretches = 0;
    let from = 0;
    while (from < times.length) {
      const began = times[from]?.raisedMs ?? 0;
      let next = from;
      while (next < times.length && (times[next]?.raisedMs ?? 0) - began < CHATTERS.withinMs) next += 1;
      if (next - from >= CHATTERS.times) stretches += 1;
      from = next - from >= CHATTERS.times ? next : from + 1;
    }
    return stretches;
  });
}

/** Alarms that were gone within seconds and did not come back at once, and how often. */
export function fleeting(raises: readonly Raise[]): Often[] {
  return eachAlarm(
    raises,
    (times) =>
      times.filter(({ raisedMs, returnedMs }, at) => {
        const next = times[at + 1]?.raisedMs;
        const isGone = returnedMs !== null && returnedMs - raisedMs < FLEETS.goneMs;
        return isGone && (next === undefined || next - raisedMs > FLEETS.backMs);
      }).length,
  );
}

/** Alarms that were active for more than a day without a break, and how often. @param nowMs the present */
export function stale(raises: readonly Raise[], nowMs: number): Often[] {
  return eachAlarm(
    raises,
    (times) => times.filter(({ raisedMs, returnedMs }) => (returnedMs ?? nowMs) - raisedMs > DAY_MS).length,
  );
}

function eachAlarm(raises: readonly Raise[], count: (times: readonly Raise[]) => number): Often[] {
  const byAlarm = groupBy(
    [...raises].sort((a, b) => a.raisedMs - b.raisedMs),
    ({ alarm }) => alarm,
  );
  return [...byAlarm]
    .map(([alarm, times]) => ({ alarm, times: count(times) }))
    .filter(({ times }) => times > 0)
    .sort(mostFirst);
}

/** The most frequent first; of equals by id, so that the order stays. */
export function mostFirst(a: Often, b: Often): number {
  return b.times - a.times || (a.alarm < b.alarm ? -1 : 1);
}
