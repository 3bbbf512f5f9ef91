import 'server-only';
import type { DerivedSeries } from '#core/readings/derived/series';
import { derivedSeriesOf } from '#core/readings/derived/series-of';
import type { Facility } from '#core/facility/facility';
import { loadFacility } from '#data/facility/load-facility';
import type { SensorLimits } from '#data/readings/limits';
import { sensorsAt } from '#data/readings/sensor-names';

/** What follows from the description of a site for its readings. */
export interface DescribedSeries {
  revision: number;
  /** Derived series of every system, with the ids of their inputs in their order. */
  derived: { systemId: string; series: DerivedSeries; inputIds: string[] }[];
  /** Limits that alarms hold sensors to, by the id of the sensor. */
  limits: SensorLimits[];
}

/** Sites kept in memory. */
const MOST = 200;
const kept = new Map<string, DescribedSeries>();

/** What follows for the readings of a site, read once for each revision. @returns null when the site is gone */
export async function describedSeries(siteId: string, revision: number): Promise<DescribedSeries | null> {
  const known = kept.get(siteId);
  if (known?.revision === revision) return known;
  const [loaded, sensors] = await Promise.all([loadFacility(siteId), sensorsAt(siteId)]);
  if (!loaded) return null;
  const ids = new Map(sensors.map((one) => [`${one.system}/${one.key}`, one] as const));
  const idOf = (system: string, key: string) => ids.get(`${system}/${key}`);
  const derived = loaded.facility.systems.flatMap((system) =>
    derivedSeriesOf(loaded.facility, system).flatMap((series) => {
      const found = series.inputs.flatMap(({ sensor }) => idOf(system.key, sensor) ?? []);
      const [first] = found;
      if (!first || found.length < series.inputs.length) return [];
      return [{ systemId: first.systemId, series, inputIds: found.map(({ id }) => id) }];
    }),
  );
  const limits = limitsOf(loaded.facility, (system, key) => idOf(system, key)?.id);
  const fresh = { revision: loaded.revision, derived, limits };
  kept.delete(siteId);
  kept.set(siteId, fresh);
  for (const oldest of kept.keys()) if (kept.size > MOST) kept.delete(oldest);
  return fresh;
}

/** Of several alarms of one sensor the limits that are reached first. */
function limitsOf({ systems }: Facility, idOf: (system: string, key: string) => string | undefined): SensorLimits[] {
  const limits = new Map<string, { above: number; below: number }>();
  for (const system of systems)
    for (const { on } of system.alarms) {
      const id = on.kind === 'sensor' ? idOf(system.key, on.sensor) : undefined;
      if (on.kind !== 'sensor' || id === undefined) continue;
      const { above, below } = limits.get(id) ?? { above: Infinity, below: -Infinity };
      limits.set(id, { above: Math.min(above, on.above ?? above), below: Math.max(below, on.below ?? below) });
    }
  return [...limits].map(([sensorId, { above, below }]) => ({ sensorId, above: finite(above), below: finite(below) }));
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
