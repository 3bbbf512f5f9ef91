import { type Condition, conditionOf, type Limits, type Silence } from '#core/alarms/condition';
import { beginWatch, hold, pass, type Seen, type Step, type Watch } from '#core/alarms/is-true';
import { sideOf } from '#core/alarms/side';
import type { Facility } from '#core/facility/facility';
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
const UNDER_WAY_MS = 2000;

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
      const told = (condition.kind === 'limits' ? [condition.sensor] : condition.sensors).flatMap(
        (sensor) => bySensor.get(sensor) ?? [],
      );
      const watched: Watched = {
        system: system.key,
        alarm: alarm.key,
        watch: beginWatch(condition, fromMs),
        raised: [],
      };
      if (condition.kind === 'limits') for (const one of told) followLimits(condition, watched, one);
      else followSilence(condition, watched, told);
      passTo(condition, watched, untilMs);
      return [watched];
    }),
  );
}

/** Most readings are as they should be, of an alarm that is calm: they change nothing but which one was the newest. */
function followLimits(condition: Limits, watched: Watched, { atMs, values, odd }: Series): void {
  for (const [i, value] of values.entries()) {
    const at = atMs[i] ?? 0;
    const quality = odd.get(i)?.quality ?? 'good';
    if (watched.watch.phase === 'normal' && quality === 'good' && sideOf(condition, value) !== 'beyond') {
      watched.watch.lastMs = at;
      watched.watch.lastValue = value;
    } else take(condition, watched, { atMs: at, cameMs: at + UNDER_WAY_MS, value, quality, isByHand: false });
  }
}

/** Of several sensors that tell at once one is enough. */
function followSilence(condition: Silence, watched: Watched, told: readonly Series[]): void {
  const times = Float64Array.from(new Set(told.flatMap(({ atMs }) => atMs))).sort();
  for (const atMs of times)
    take(condition, watched, { atMs, cameMs: atMs + UNDER_WAY_MS, value: 0, quality: 'good', isByHand: false });
}

function take(condition: Condition, watched: Watched, seen: Seen): void {
  passTo(condition, watched, seen.cameMs - 1);
  for (const step of hold(condition, watched.watch, seen)) note(watched, step, seen.cameMs);
}

function note(watched: Watched, { watch, turn }: Step, knownMs: number): void {
  const { system, alarm, raised } = watched;
  watched.watch = { ...watch };
  if (turn?.kind === 'raised')
    raised.push({ system, alarm, beganMs: turn.atMs, raisedMs: knownMs, value: turn.value, returned: null });
  const last = raised.at(-1);
  if (turn?.kind === 'returned' && last) last.returned = { atMs: turn.atMs, knownMs, value: turn.value };
}

/** The clock goes on to a moment: whatever was due by then came about when it was due. */
function passTo(condition: Condition, watched: Watched, toMs: number): void {
  const { dueMs } = watched.watch;
  if (dueMs !== null && dueMs <= toMs) note(watched, pass(condition, watched.watch, dueMs), dueMs);
}
