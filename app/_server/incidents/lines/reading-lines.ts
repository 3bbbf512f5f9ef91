import 'server-only';
import type { SensorQuantity, System } from '#core/facility/system';
import type { TimelineLine } from '#core/incidents/timeline';
import type { NearSeries, SeriesPoint } from '#data/incidents/near-readings';

/** A limit that an alarm sets on a sensor, in its unit. */
export interface SensorLimit {
  sensor: string;
  name: string;
  above?: number;
  below?: number;
}

/** The limits of the alarms of systems, as they are described today. */
export function limitsIn(systems: readonly System[]): SensorLimit[] {
  return systems.flatMap(({ alarms }) =>
    alarms.flatMap(({ name, on }) =>
      on.kind === 'sensor' ? [{ sensor: on.sensor, name, above: on.above, below: on.below }] : [],
    ),
  );
}

/** Of each sensor with a limit: when it was first beyond it, when furthest, and when it was back. @param fromMs not before */
export function readingLines(
  series: readonly NearSeries[],
  limits: readonly SensorLimit[],
  fromMs: number,
): TimelineLine[] {
  return series.flatMap(({ sensor, points, byHand }) =>
    limits
      .filter((limit) => limit.sensor === sensor.key)
      .flatMap((limit) => {
        const seen = [...points, ...byHand].sort((a, b) => a.atMs - b.atMs).filter(({ atMs }) => atMs >= fromMs);
        return excursion(sensor, limit, seen);
      }),
  );
}

function excursion(sensor: NearSeries['sensor'], limit: SensorLimit, points: readonly SeriesPoint[]): TimelineLine[] {
  const beyond = points.filter((point) => excess(limit, point.value) > 0);
  const [first] = beyond;
  const last = beyond.at(-1);
  if (!first || !last) return [];
  const furthest = beyond.reduce((a, b) => (excess(limit, b.value) > excess(limit, a.value) ? b : a));
  const back = points.find(({ atMs }) => atMs > last.atMs);
  const line = (what: string, { atMs, value }: SeriesPoint, isAbnormal: boolean): TimelineLine => ({
    id: `${sensor.id}/${limit.name}/${what}`,
    atMs,
    topic: 'reading',
    what: `${sensor.name} ${what} (${limit.name})`,
    who: null,
    source: 'device',
    figures: [{ quantity: sensor.quantity as SensorQuantity, value }],
    isAbnormal,
  });
  return [
    line('first beyond its limit', first, true),
    ...(furthest.atMs > first.atMs ? [line('furthest beyond its limit', furthest, true)] : []),
    ...(back ? [line('back within its limit', back, false)] : []),
  ];
}

/** How far a value is beyond a limit; 0 or less within it. */
function excess({ above, below }: SensorLimit, value: number): number {
  return Math.max(above === undefined ? -Infinity : value - above, below === undefined ? -Infinity : below - value);
}
