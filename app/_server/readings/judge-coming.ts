import 'server-only';
import { groupBy } from '#core/group-by';
import { type Judged, judgeTogether, type Neighbour } from '#core/readings/judge';
import { judgeAfter, judgeBeside, judgeClock, type Standing } from '#core/readings/judge-after';
import { standingOf } from '#data/readings/before';
import type { SensorPlace } from '#data/readings/sensor-names';

/** A reading whose sensor is known, judged by itself. */
export interface Placed extends Neighbour {
  sensor: SensorPlace;
  atMs: number;
  /** Whether it is only for the record: no alarm is held to it. */
  isOfPast: boolean;
}

/** How far a reading can be trusted, and since when exactly its value has stood. */
export interface JudgedComing extends Judged {
  sameSinceMs: number;
}

/**
 * Judges readings of devices by the clock, beside others of their system and instant, by what was before them, and beside the
 * other probe of their tank. What is there is asked for once, for all of them.
 *
 * @param sensors   all of the site
 * @param cameMs    when they came, ms since 1970
 * @returns         what each is then, in the order given
 */
export async function judgeComing(
  siteId: string,
  readings: readonly Placed[],
  sensors: Iterable<SensorPlace>,
  cameMs: number,
): Promise<JudgedComing[]> {
  const others = othersOf(readings, sensors);
  const wanted = new Set(
    readings.flatMap(({ sensor: { id } }) => [id, ...(others.get(id) ?? []).map((one) => one.id)]),
  );
  const standing = await standingOf(siteId, [...wanted]);
  const together = judgeBySystem(readings);
  const judged: JudgedComing[] = [];
  const inOrder = [...readings.entries()].sort(([, a], [, b]) => a.atMs - b.atMs);
  for (const [at, reading] of inOrder) {
    const { sensor, atMs, value } = reading;
    const before = standing.get(sensor.id) ?? null;
    const clocked = { ...reading, ...judgeClock({ ...reading, ...together[at] }, cameMs) };
    const after = judgeAfter(clocked, before);
    const beside = besideOthers({ ...reading, ...after }, others.get(sensor.id) ?? [], standing);
    judged[at] = { ...beside, sameSinceMs: after.sameSinceMs };
    if (!before || before.atMs < atMs)
      standing.set(sensor.id, { atMs, value, quality: beside.quality, sameSinceMs: after.sameSinceMs });
  }
  return judged;
}

function besideOthers(
  reading: Placed,
  others: readonly SensorPlace[],
  standing: ReadonlyMap<string, Standing>,
): Judged {
  let judged: Judged = reading;
  for (const other of others)
    judged = judgeBeside({ ...reading, ...judged }, standing.get(other.id) ?? null, [
      reading.sensor.accuracy,
      other.accuracy,
    ]);
  return judged.reason === undefined ? { quality: judged.quality } : { quality: judged.quality, reason: judged.reason };
}

/** The other probes of the tank and quantity of each sensor that sent something. */
function othersOf(readings: readonly Placed[], sensors: Iterable<SensorPlace>): Map<string, SensorPlace[]> {
  const placeOf = ({ tankId, quantity, compensatedToC }: SensorPlace) => `${tankId} ${quantity} ${compensatedToC}`;
  const all = [...new Map([...sensors].map((one) => [one.id, one])).values()].filter(({ tankId }) => tankId !== null);
  const byPlace = groupBy(all, placeOf);
  const senders = new Map(readings.map(({ sensor }) => [sensor.id, sensor]));
  return new Map(
    [...senders].map(([id, sensor]) => [
      id,
      sensor.tankId === null ? [] : (byPlace.get(placeOf(sensor)) ?? []).filter((one) => one.id !== id),
    ]),
  );
}

/** Those of one system and instant are judged beside one another. @returns in the order given */
function judgeBySystem(readings: readonly Placed[]): Judged[] {
  const together = groupBy(readings.entries(), ([, { sensor, atMs }]) => `${sensor.systemId} ${atMs}`);
  const judged: Judged[] = [];
  for (const group of together.values()) {
    const verdicts = judgeTogether(group.map(([, reading]) => reading));
    for (const [n, [at]] of group.entries()) judged[at] = verdicts[n] ?? { quality: 'good' };
  }
  return judged;
}
