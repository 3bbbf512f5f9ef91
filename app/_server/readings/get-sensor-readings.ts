import 'server-only';
import type { z } from 'zod';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { SensorQuantity } from '#core/facility/system';
import { type Bucket, type Span, SPANS } from '#core/readings/spans';
import { ok, type Result } from '#core/result';
import { alarmIdsOf, drawnReadings, type RaisedAlarm, raisedBy, type ShownPoint } from '#data/readings/chart';
import { sensorSpan } from '#shape/readings/sensor-place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { timeIn } from '../local-day';
import { findSensor } from './find-sensor';
import { whyNot } from './list-readings';
import { type SpanThere, spanOf } from './span-of';

/** A limit at which an alarm is raised. */
export interface AlarmLimit {
  name: string;
  side: 'above' | 'below';
  /** In the facility file's unit. */
  value: number;
}

/** Good readings of some hours. */
export interface HoursRow extends Bucket {
  /** When the hours began, at the site. */
  there: string;
}

/** Readings of a sensor over a span of time. */
export interface SensorReadings {
  site: { key: string; name: string; zone: string };
  system: { key: string; name: string };
  sensor: { key: string; name: string; quantity: SensorQuantity };
  span: Span;
  days: Pick<SpanThere, 'first' | 'last' | 'earlier' | 'later'>;
  /** ms since 1970. */
  fromMs: number;
  toMs: number;
  buckets: Bucket[];
  /** Time without a reading that is a gap, ms. */
  gapMs: number;
  points: (ShownPoint & { there: string; why: string | null })[];
  pointCount: number;
  limits: AlarmLimit[];
  raised: (RaisedAlarm & { there: string })[];
  rows: HoursRow[];
}

export const getSensorReadingsShape = sensorSpan;

/** Buckets across a chart. */
const BUCKETS = 480;
/** How many times the usual step is a gap, and the least that is one, ms. Common practice, no source. */
const GAP_STEPS = 3;
const LEAST_GAP_MS = 60_000;

/** Readings of a sensor over a day, a week, a month or sixty days. */
export async function getSensorReadings(
  who: Who,
  { span, until, ...place }: z.output<typeof getSensorReadingsShape>,
): Promise<Result<SensorReadings, Refusal>> {
  const found = await findSensor(who, place);
  if (!found.ok) return found;
  const { site, system, systemId, sensor, named, alarms } = found.value;
  const there = spanOf(site.zone, span, until, now());
  const { from, to } = there;
  const keys = alarms.map(({ key }) => key);
  const lengthS = (to.getTime() - from.getTime()) / 1000;
  const [drawn, hours, raised] = await Promise.all([
    drawnReadings(site.id, named.id, { from, to, bucketS: lengthS / BUCKETS }),
    drawnReadings(site.id, named.id, { from, to, bucketS: SPANS[span].rowHours * 3600 }),
    alarmIdsOf(site.id, systemId, keys).then((ids) => raisedBy(site.id, ids, there)),
  ]);
  const localOf = (atMs: number) => timeIn(site.zone, new Date(atMs)).slice(0, 16);
  const rowMs = SPANS[span].rowHours * 3_600_000;
  const beginOf = ({ fromMs }: Bucket) => from.getTime() + Math.floor((fromMs - from.getTime()) / rowMs) * rowMs;
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    system: { key: system.key, name: system.name },
    sensor: { key: sensor.key, name: sensor.name, quantity: sensor.quantity },
    span,
    days: { first: there.first, last: there.last, earlier: there.earlier, later: there.later },
    fromMs: from.getTime(),
    toMs: to.getTime(),
    buckets: drawn.buckets,
    gapMs: Math.max(GAP_STEPS * (drawn.usualMs ?? 0), LEAST_GAP_MS),
    points: drawn.points.map((point) => ({ ...point, there: localOf(point.atMs), why: whyNot(point.reason) })),
    pointCount: drawn.pointCount,
    limits: alarms.flatMap(limitsOf),
    raised: raised.map((one) => ({ ...one, there: localOf(one.atMs) })),
    rows: hours.buckets.map((row) => ({ ...row, there: localOf(beginOf(row)) })),
  });
}

function limitsOf({ name, on }: AlarmDefinition): AlarmLimit[] {
  if (on.kind !== 'sensor') return [];
  const { above, below } = on;
  return [
    ...(above === undefined ? [] : [{ name, side: 'above' as const, value: above }]),
    ...(below === undefined ? [] : [{ name, side: 'below' as const, value: below }]),
  ];
}
