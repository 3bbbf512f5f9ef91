import { type Condition, conditionOf } from '#core/alarms/condition';
import { beginWatch, hold, pass, type Seen, type Step, type Watch } from '#core/alarms/is-true';
import type { Facility } from '#core/facility/facility';
import type { System } from '#core/facility/system';
import type { Series } from './sampled';

/** One time that an alarm was raised in the past. */
export interface Raised {
  system: string;
  alarm: string;
  /** Since when what it watches held, and when it was raised, ms since 1970. */
  beganMs: number;
  raisedMs: number;
  value: number | null;
  /** When it was back to normal by the readings, and when that was known; null while it lasts. */
  returned: { atMs: number; knownMs: number; value: number | null } | null;
}

/** What an alarm did through the past, and where it stands at the end. */
export interface Watched {
  system: string;
  alarm: string;
  watch: Watch;
  raised: Raised[];
}

/** ms from a reading to the moment it is judged: its way, and the turn of whoever judges. */
export const UNDER_WAY_MS = 2000;

/**
 * Holds every alarm of a site to what its gateways sent, with the same rules by which it is judged when readings arrive.
 *
 * @param series    of every system
 * @param fromMs    when the alarms were begun; `untilMs` now
 */
export function raisedAt(
  facility: Facility,
  series: readonly Series[],
  { fromMs, untilMs }: { fromMs: number; untilMs: number },
): Watched[] {
  const bySensor = new Map(series.map((one) => [`${one.system}/${one.sensor}`, one]));
  return facility.systems.flatMap((system) =>
    system.alarms.flatMap((alarm) => {
      const condition = conditionOf(facility, system, alarm);
      if (!condition) return [];
      const told = condition.kind === 'limits' ? [condition.sensor] : condition.sensors;
      const seen = seenOf(told.flatMap((sensor) => bySensor.get(sensor) ?? []));
      return [follow(system, alarm.key, condition, seen, { fromMs, untilMs })];
    }),
  );
}

function follow(
  { key: system }: System,
  alarm: string,
  condition: Condition,
  seen: readonly Seen[],
  { fromMs, untilMs }: { fromMs: number; untilMs: number },
): Watched {
  const watched: Watched = { system, alarm, watch: beginWatch(condition, fromMs), raised: [] };
  const take = ({ watch, turn }: Step, knownMs: number) => {
    watched.watch = watch;
    if (turn?.kind === 'raised')
      watched.raised.push({ system, alarm, beganMs: turn.atMs, raisedMs: knownMs, value: turn.value, returned: null });
    const last = watched.raised.at(-1);
    if (turn?.kind === 'returned' && last) last.returned = { atMs: turn.atMs, knownMs, value: turn.value };
  };
  for (const one of seen) {
    passTo(condition, watched, one.cameMs - 1, take);
    for (const step of hold(condition, watched.watch, one)) take(step, one.cameMs);
  }
  passTo(condition, watched, untilMs, take);
  return watched;
}

/** The clock goes on to a moment: whatever was due by then came about when it was due. */
function passTo(
  condition: Condition,
  watched: Watched,
  toMs: number,
  take: (step: Step, knownMs: number) => void,
): void {
  const { dueMs } = watched.watch;
  if (dueMs !== null && dueMs <= toMs) take(pass(condition, watched.watch, dueMs), dueMs);
}

/** The readings of some sensors in the order in which they came. */
function seenOf(series: readonly Series[]): Seen[] {
  const all = series.flatMap(({ atMs, values, odd }) =>
    atMs.map(
      (at, i): Seen => ({
        atMs: at,
        cameMs: at + UNDER_WAY_MS,
        value: values[i] ?? 0,
        quality: odd.get(i)?.quality ?? 'good',
        isByHand: false,
      }),
    ),
  );
  return series.length > 1 ? all.sort((a, b) => a.cameMs - b.cameMs) : all;
}
