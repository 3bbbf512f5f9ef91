import type { Facility } from '#core/facility/facility';
import type { SensorQuantity } from '#core/facility/system';
import type { Course } from './course';
import { instrumentOf } from './instrument';
import { randomOf } from './random';
import { momentsOf, truthOf } from './truth';
import type { Habits } from './unmodelled';

/** The readings of one sensor, as its gateway sent them: two columns, in order of time. */
export interface Series {
  system: string;
  sensor: string;
  /** ms since 1970. */
  atMs: number[];
  /** In the unit of the sensor's quantity. */
  values: number[];
  /** Those that are not good, by their place. */
  odd: Map<number, { quality: 'suspect' | 'bad'; reason: string }>;
}

/** A stretch of time, ms since 1970. */
export interface Stretch {
  fromMs: number;
  toMs: number;
}

/** When gateways send: every ten minutes, every five while something is wrong. */
const EVERY_MS = 600_000;
const CLOSE_MS = 300_000;
/** What hardly moves is looked at every five minutes, and sent when it has moved by so much, and every hour besides. */
const MOVED: Partial<Record<SensorQuantity, number>> = { watts: 3, leak: 0.5, level: 3, flow: 120 };
const AT_LEAST_MS = 3_600_000;

/**
 * What the gateways sent of one system.
 *
 * @param span     from when to when
 * @param outages  when each gateway was silent, by key
 * @param close    when they sent twice as often
 */
export function sampled(
  facility: Facility,
  course: Course,
  habits: Habits,
  span: Stretch,
  { outages, close }: { outages: ReadonlyMap<string, readonly Stretch[]>; close: readonly Stretch[] },
): Series[] {
  const { system } = course;
  return system.sensors.flatMap((sensor): Series[] => {
    const truth = sensor.gateway === undefined ? null : truthOf(course, sensor, habits);
    if (!truth || sensor.gateway === undefined) return [];
    const random = randomOf(facility.site.key, system.key, sensor.key);
    const instrument = instrumentOf(sensor.quantity, random, span.fromMs);
    const momentAt = momentsOf(course);
    const silent = outages.get(sensor.gateway) ?? [];
    const series: Series = { system: system.key, sensor: sensor.key, atMs: [], values: [], odd: new Map() };
    const offset = randomOf(facility.site.key, sensor.gateway).whole(1, 40) * 1000;
    const isClose = MOVED[sensor.quantity] !== undefined;
    for (let due = span.fromMs; due + offset <= span.toMs; due += isClose || within(close, due) ? CLOSE_MS : EVERY_MS) {
      const atMs = due + offset;
      if (within(silent, atMs)) continue;
      const moment = momentAt(atMs);
      const value = moment && truth(moment);
      if (value === null) continue;
      const shown = Math.max(floorOf(sensor.quantity), instrument.shows(atMs, value));
      if (!isWorthSending(series, sensor.quantity, atMs, shown)) continue;
      series.atMs.push(atMs);
      series.values.push(shown);
    }
    return [series];
  });
}

function isWorthSending({ atMs, values }: Series, quantity: SensorQuantity, nowMs: number, shown: number): boolean {
  const least = MOVED[quantity];
  const last = values.at(-1);
  if (least === undefined || last === undefined) return true;
  return Math.abs(shown - last) > least || nowMs - (atMs.at(-1) ?? 0) >= AT_LEAST_MS;
}

/** Whether a moment lies in one of some stretches. */
export function within(stretches: readonly Stretch[], atMs: number): boolean {
  return stretches.some(({ fromMs, toMs }) => atMs >= fromMs && atMs < toMs);
}

/** What no instrument shows less of: a level may lie below its mark, and the rest is not less than nothing. */
function floorOf(quantity: string): number {
  return quantity === 'level' || quantity === 'temperature' || quantity === 'redox' ? Number.NEGATIVE_INFINITY : 0;
}
