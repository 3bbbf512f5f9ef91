import {
  type Around,
  type Condition,
  type Limits,
  NOTHING_AROUND,
  type Silence,
  type StateSpell,
  sensorsOf,
} from '#core/alarms/condition';
import { conditionOf } from '#core/alarms/condition-of';
import { beginWatch, hold, pass, type Seen, type Step, type Watch } from '#core/alarms/is-true';
import { sideOf } from '#core/alarms/side';
import { daySecondIn } from '#core/time/day-second';
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
 * @param spells    states that systems were put into
 * @param fromMs    when the alarms were begun; `untilMs` now
 */
export function raisedAt(
  facility: Facility,
  series: readonly Series[],
  spells: readonly StateSpell[],
  { fromMs, untilMs }: { fromMs: number; untilMs: number },
): Watched[] {
  const around: Around = { spells, daySecond: daySecondIn(facility.site.zone) };
  const bySensor = new Map(series.map((one) => [`${one.system}/${one.sensor}`, one]));
  return facility.systems.flatMap((system) =>
    system.alarms.flatMap((alarm) => {
      const condition = conditionOf(facility, system, alarm);
      if (!condition) return [];
      const told = sensorsOf(condition).flatMap((sensor) => bySensor.get(sensor) ?? []);
      const watched: Watched = {
        system: system.key,
        alarm: alarm.key,
        watch: beginWatch(condition, fromMs),
        raised: [],
      };
      if (condition.kind === 'limits' && !condition.of) for (const one of told) followLimits(condition, watched, one);
      else if (condition.kind === 'silence') followSilence(condition, watched, told);
      else if (condition.kind === 'outstayed') followStates(condition, watched, around);
      else followAll(condition, watched, told, around);
      passTo(condition, watched, untilMs, around);
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

/** What is worked out of several readings is held to each, in the order they were taken. */
function followAll(condition: Condition, watched: Watched, told: readonly Series[], around: Around): void {
  const all = told.flatMap(({ system, sensor, atMs, values, odd }) =>
    values.map((value, i) => ({
      ...{ sensor: `${system}/${sensor}`, value, atMs: atMs[i] ?? 0, cameMs: (atMs[i] ?? 0) + UNDER_WAY_MS },
      ...{ quality: odd.get(i)?.quality ?? ('good' as const), isByHand: false },
    })),
  );
  for (const seen of all.sort((a, b) => a.atMs - b.atMs)) take(condition, watched, seen, around);
}

/** A state is looked at whenever one begins or ends. */
function followStates(condition: Condition, watched: Watched, around: Around): void {
  const turns = around.spells.flatMap(({ fromMs, toMs }) => [fromMs, ...(toMs === null ? [] : [toMs])]);
  for (const atMs of turns.sort((a, b) => a - b)) {
    passTo(condition, watched, atMs - 1, around);
    note(watched, pass(condition, watched.watch, atMs, around), atMs);
  }
}

function take(condition: Condition, watched: Watched, seen: Seen, around = NOTHING_AROUND): void {
  passTo(condition, watched, seen.cameMs - 1, around);
  for (const step of hold(condition, watched.watch, seen, around)) note(watched, step, seen.cameMs);
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
function passTo(condition: Condition, watched: Watched, toMs: number, around = NOTHING_AROUND): void {
  const { dueMs } = watched.watch;
  if (dueMs !== null && dueMs <= toMs) note(watched, pass(condition, watched.watch, dueMs, around), dueMs);
}
