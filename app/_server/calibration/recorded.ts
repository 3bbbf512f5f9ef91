import 'server-only';
import type { Point } from '#core/calibration/stretch';
import type { Watts } from '#core/calibration/switched';
import { type Used, usedByLevel, usedByRounds } from '#core/calibration/used';
import type { Bucket } from '#core/readings/spans';
import type { Sensor, SensorQuantity, System } from '#core/facility/system';
import { drawnReadings } from '#data/readings/chart';
import { sensorsAt } from '#data/readings/sensor-names';
import { usedOnRounds } from '#data/rounds/used-water';

/** Minutes whose good readings count as one. */
const BUCKET_S = 300;
/** s by which a probe follows late where nothing is said: a sheathed one in moving water. Common practice, no source. */
const USUAL_LAG_S = 300;

/** What was recorded of a system. */
export interface Recorded {
  /** A probe with its readings: of those in the tanks, the one that sent most. */
  probe: (quantity: SensorQuantity, tanks: ReadonlySet<string>) => Promise<Probe | null>;
  /** Power of equipment, by key, of all that is measured. */
  watts: () => Promise<Map<string, Watts[]>>;
  /** What top-offs took from their reservoirs: by the level of the reservoir, else by the rounds. */
  used: () => Promise<{ uses: Used[]; by: 'level' | 'rounds' }>;
}

export interface Probe {
  sensor: Sensor;
  points: Point[];
  lagS: number;
}

/** Asks for what was recorded of a system; only good readings count, and none that somebody took by hand. */
export async function recordedOf(siteId: string, system: System, span: { from: Date; to: Date }): Promise<Recorded> {
  const named = (await sensorsAt(siteId)).filter((one) => one.system === system.key);
  const idOf = new Map(named.map(({ key, id }) => [key, id]));
  // Several figures come from the same probes: each is asked for once.
  const asked = new Map<string, Promise<Bucket[]>>();
  const bucketsOf = async ({ key }: Sensor): Promise<Bucket[]> => {
    const id = idOf.get(key);
    if (id === undefined) return [];
    const found = asked.get(key) ?? drawnReadings(siteId, id, { ...span, bucketS: BUCKET_S }).then((d) => d.buckets);
    asked.set(key, found);
    return await found;
  };
  const pointsOf = async (sensor: Sensor): Promise<Point[]> =>
    (await bucketsOf(sensor)).map(({ fromMs, toMs, mean }) => ({ atMs: (fromMs + toMs) / 2, value: mean }));
  return {
    probe: async (quantity, tanks) => {
      const there = system.sensors.filter((one) => one.quantity === quantity && tanks.has(one.tank ?? ''));
      const read = await Promise.all(there.map(async (sensor) => ({ sensor, points: await pointsOf(sensor) })));
      const [most] = read.sort((a, b) => b.points.length - a.points.length);
      if (!most || most.points.length === 0) return null;
      return { ...most, lagS: most.sensor.lagS?.value ?? USUAL_LAG_S };
    },
    watts: async () => {
      const meters = system.sensors.filter(({ quantity }) => quantity === 'watts');
      const read = await Promise.all(
        meters.map(async (meter) => [meter.equipment ?? '', await bucketsOf(meter)] as const),
      );
      return new Map(read.filter(([, buckets]) => buckets.length > 0));
    },
    used: async () => await usedOf(siteId, system, span, pointsOf),
  };
}

async function usedOf(
  siteId: string,
  system: System,
  { from, to }: { from: Date; to: Date },
  pointsOf: (sensor: Sensor) => Promise<Point[]>,
): Promise<{ uses: Used[]; by: 'level' | 'rounds' }> {
  const topOff = system.equipment.find(({ type, source }) => type === 'top-off' && source !== 'mains');
  const reservoir = system.tanks.find(({ key }) => key === topOff?.source);
  if (!topOff || !reservoir) return { uses: [], by: 'rounds' };
  const gauge = system.sensors.find(({ quantity, tank }) => quantity === 'level' && tank === reservoir.key);
  const surface = reservoir.surfaceM2.value;
  const byLevel = gauge && surface !== null ? usedByLevel(await pointsOf(gauge), surface) : [];
  if (byLevel.length > 0) return { uses: byLevel, by: 'level' };
  const line = `${system.key}/equipment/${topOff.key}/used`;
  return { uses: usedByRounds(await usedOnRounds(siteId, line, from, to)), by: 'rounds' };
}
