import 'server-only';
import type { z } from 'zod';
import type { AlarmDefinition } from '#core/alarms/definition';
import type { System } from '#core/facility/system';
import type { DerivedKind, DerivedSeries } from '#core/readings/derived/series';
import type { SeriesQuantity } from '#core/readings/figures';
import { type Bucket, gathered, type Span, SPANS } from '#core/readings/spans';
import { ok, type Result } from '#core/result';
import { type ShownPoint, shownPoints } from '#data/readings/chart';
import { alarmIdsOf, type RaisedAlarm, raisedBy, type StateRun, statesWithin } from '#data/readings/chart-alarms';
import { sensorSpan } from '#shape/readings/sensor-place';
import { now } from '../clock';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { timeIn } from '../local-day';
import { drawnBuckets } from './drawn-buckets';
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
  sensor: { key: string; name: string; quantity: SeriesQuantity };
  /** By which law it follows from which sensors; null for a sensor. */
  derived: { kind: DerivedKind; from: { key: string; name: string }[] } | null;
  span: Span;
  days: Pick<SpanThere, 'first' | 'last' | 'earlier' | 'later'>;
  /** ms since 1970. */
  fromMs: number;
  toMs: number;
  buckets: Bucket[];
  /** Time without a reading that is a gap, ms. */
  gapMs: number;
  /** s outside the limits of alarms, of those for which something is known; null where that was not reckoned. */
  outside: { outsideS: number; heldS: number } | null;
  points: (ShownPoint & { there: string; why: string | null })[];
  pointCount: number;
  limits: AlarmLimit[];
  raised: (RaisedAlarm & { there: string })[];
  states: (StateRun & { there: string; endedThere: string | null })[];
  rows: HoursRow[];
}

const HOUR_MS = 3_600_000;
/** Of a series of which nothing was worked out yet: no reading stands under this id. */
const NOBODY = '00000000-0000-0000-0000-000000000000';

export const getSensorReadingsShape = sensorSpan;

/** Readings of a sensor or a derived series over a day, a week, a month, sixty days or a year. */
export async function getSensorReadings(
  who: Who,
  { span, until, ...place }: z.output<typeof getSensorReadingsShape>,
): Promise<Result<SensorReadings, Refusal>> {
  const found = await findSensor(who, place);
  if (!found.ok) return found;
  const { site, system, systemId, sensor, id, derived, alarms } = found.value;
  const there = spanOf(site.zone, span, until, now());
  const { from, to } = there;
  const keys = alarms.map(({ key }) => key);
  const asked = { siteId: site.id, sensorId: id ?? NOBODY, from, to };
  const [drawn, { points, count }, raised, states] = await Promise.all([
    drawnBuckets(asked, SPANS[span].of),
    shownPoints(site.id, asked.sensorId, there),
    alarmIdsOf(site.id, systemId, keys).then((ids) => raisedBy(site.id, ids, there)),
    statesWithin(site.id, systemId, there),
  ]);
  const localOf = (atMs: number) => timeIn(site.zone, new Date(atMs)).slice(0, 16);
  const rowMs = SPANS[span].rowHours * HOUR_MS;
  const rows = gathered(drawn.buckets, from.getTime(), rowMs);
  const beginOf = ({ fromMs }: Bucket) => from.getTime() + Math.floor((fromMs - from.getTime()) / rowMs) * rowMs;
  return ok({
    site: { key: site.key, name: site.name, zone: site.zone },
    system: { key: system.key, name: system.name },
    sensor: { key: sensor.key, name: sensor.name, quantity: sensor.quantity },
    derived: derived && derivedSaid(system, derived),
    span,
    days: { first: there.first, last: there.last, earlier: there.earlier, later: there.later },
    fromMs: from.getTime(),
    toMs: to.getTime(),
    buckets: drawn.buckets,
    gapMs: drawn.gapMs,
    outside: drawn.outside,
    points: points.map((point) => ({ ...point, there: localOf(point.atMs), why: whyNot(point.reason) })),
    pointCount: count,
    limits: alarms.flatMap(limitsOf),
    raised: raised.map((one) => ({ ...one, there: localOf(one.atMs) })),
    states: states.map((one) => ({
      ...one,
      there: localOf(one.fromMs),
      endedThere: one.toMs === null ? null : localOf(one.toMs),
    })),
    rows: rows.map((row) => ({ ...row, there: localOf(beginOf(row)) })),
  });
}

/** What it follows from, by the names of its sensors. */
function derivedSaid(system: System, { kind, inputs }: DerivedSeries): NonNullable<SensorReadings['derived']> {
  const nameOf = (key: string) => system.sensors.find((one) => one.key === key)?.name ?? key;
  return { kind, from: inputs.map(({ sensor }) => ({ key: sensor, name: nameOf(sensor) })) };
}

function limitsOf({ name, on }: AlarmDefinition): AlarmLimit[] {
  if (on.kind !== 'sensor') return [];
  const { above, below } = on;
  return [
    ...(above === undefined ? [] : [{ name, side: 'above' as const, value: above }]),
    ...(below === undefined ? [] : [{ name, side: 'below' as const, value: below }]),
  ];
}
