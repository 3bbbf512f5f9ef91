import 'server-only';
import type { Arrived, ReadRecord } from '#core/readings/arrived';
import { type Judged, judge } from '#core/readings/judge';
import { isLate } from '#core/readings/late';
import { toFacilityUnit } from '#core/readings/units';
import { ok, type Result, refused } from '#core/result';
import { noteUnknown, type SensorPlace } from '#data/readings/sensor-names';
import { type NewReading, type Stored, type Storing, storeReadings } from '#data/readings/store-readings';
import { type SiteSigns, takingIn } from '#data/readings/taking-in';
import { type JudgedComing, judgeComing, type Placed } from './judge-coming';

/** What became of one record. */
export type RecordAnswer = (KeptAnswer & { late?: true }) | { result: 'refused'; field: string; why: string };
type KeptAnswer = { result: Stored; quality: 'good' } | { result: Stored; quality: 'suspect' | 'bad'; reason: string };

/** From whom readings come, when, and how. */
export interface Coming {
  siteId: string;
  /** Id of the source. */
  cameBy: string;
  receivedAt: Date;
  /** Whether another value for the same instant supersedes what is there. */
  correct: boolean;
  /** Of the site, where they were asked for already. */
  signs?: SiteSigns;
  /** What else is to be kept with what is stored, or not at all. */
  also?: Storing['also'];
}

/** ms a source's clock may be ahead. Common practice, no source. */
const AHEAD_MS = 5 * 60_000;
/** There is no part of the readings for anything older. */
const OLDEST_MS = Date.UTC(1990, 0, 1);

type Fault = { field: string; why: string };

/**
 * Takes in what a source of the site sent: finds whose each reading is, puts it in the sensor's unit, judges it and stores it.
 * What is wrong with one record is said of it, and keeps none of the others back.
 *
 * @param records   what was read of the body, in order
 * @param fields    what the format calls its fields, for what is said of a record
 * @returns         what became of each, in the same order
 * @throws          when the database does not answer; then nothing was stored
 */
export async function takeIn(
  records: readonly ReadRecord[],
  coming: Coming,
  fields: Readonly<Record<'name' | 'time' | 'value' | 'unit', string>>,
): Promise<RecordAnswer[]> {
  const { byName, keptFrom } = await takingIn(coming.siteId, coming.signs);
  const oldestMs = Math.max(OLDEST_MS, keptFrom?.getTime() ?? OLDEST_MS);
  const placed = records.map((record) =>
    record.ok ? place(record.value, byName, { ...coming, oldestMs }, fields) : record,
  );
  const readings = placed.flatMap((one) => (one.ok ? [one.value] : []));
  const cameMs = coming.receivedAt.getTime();
  const judged = await judgeComing(coming.siteId, readings, byName.values(), cameMs);
  const outcomes = await storeReadings(
    coming.siteId,
    readings.map((reading, i) => newReading(reading, judged[i])),
    coming,
  );
  await noteStrangers(records, byName, coming);
  let next = 0;
  return placed.map((one) => {
    if (!one.ok) return { result: 'refused', field: one.reason.field, why: one.reason.why };
    const at = next++;
    const answer = answerOf(outcomes[at], judged[at]);
    // Only what is new: of what was there already the mark was settled when it first came.
    return answer.result === 'stored' && isLate(one.value.atMs, cameMs) ? { ...answer, late: true } : answer;
  });
}

function place(
  { name, atMs, value, unit, isOfPast = false, mayHaveWaited }: Arrived,
  byName: ReadonlyMap<string, SensorPlace>,
  { receivedAt, oldestMs }: Coming & { oldestMs: number },
  fields: Readonly<Record<'name' | 'time' | 'value' | 'unit', string>>,
): Result<Placed, Fault> {
  const sensor = byName.get(name);
  if (!sensor) return refused({ field: fields.name, why: 'no sensor of this site is called so' });
  const { quantity } = sensor;
  if (typeof value === 'boolean' && quantity !== 'leak')
    return refused({ field: fields.value, why: `yes or no is no reading of ${quantity}` });
  // A reading from the future would hide every true one that follows it.
  if (atMs > receivedAt.getTime() + AHEAD_MS)
    return refused({ field: fields.time, why: 'is more than 5 minutes ahead: the clock of the source is wrong' });
  if (!(atMs >= OLDEST_MS)) return refused({ field: fields.time, why: 'is before 1990' });
  if (atMs < oldestMs) return refused({ field: fields.time, why: 'is of a month whose readings were retired' });
  const raw = Number(value);
  const converted = toFacilityUnit(quantity, raw, unit);
  if (!converted.ok || !Number.isFinite(converted.value))
    return refused({ field: converted.ok ? fields.value : fields.unit, why: unitWhy(converted, quantity) });
  const verdict = judge(quantity, converted.value, unit === undefined ? { value: raw } : { value: raw, unit });
  // It may call, and must not end what calls: it may be from before that began.
  const waited = mayHaveWaited === true && verdict.quality === 'good';
  const judged: Judged = waited ? { quality: 'suspect', reason: 'waited' } : verdict;
  return ok({ sensor, atMs, quantity, value: converted.value, isOfPast, ...judged });
}

function unitWhy(converted: ReturnType<typeof toFacilityUnit>, quantity: string): string {
  if (converted.ok) return 'is too large a number';
  return converted.reason.why === 'unknown-unit' ? 'is no unit that is understood here' : `is no unit of ${quantity}`;
}

function newReading({ sensor, atMs, value, isOfPast }: Placed, judged: JudgedComing | undefined): NewReading {
  const { sameSinceMs = atMs, ...how } = judged ?? { quality: 'good' as const };
  const of = { sensorId: sensor.id, at: new Date(atMs), value, origin: 'device' as const, isOfPast };
  return { ...of, sameSince: new Date(sameSinceMs), ...how };
}

function answerOf(result: Stored | undefined, judged: Judged | undefined): KeptAnswer {
  if (!result || !judged) throw new Error('A reading has no outcome');
  if (judged.quality === 'good') return { result, quality: 'good' };
  return { result, quality: judged.quality, reason: judged.reason ?? '' };
}

/** Names of no sensor are kept, so that somebody can say whose they are. */
async function noteStrangers(
  records: readonly ReadRecord[],
  byName: ReadonlyMap<string, SensorPlace>,
  { siteId, receivedAt }: Coming,
): Promise<void> {
  const strangers = new Map<string, { name: string; unit: string | null; value: number | null }>();
  for (const record of records) {
    if (!record.ok || byName.has(record.value.name)) continue;
    const { name, unit, value } = record.value;
    strangers.set(name, { name, unit: unit ?? null, value: Number(value) });
  }
  if (strangers.size > 0) await noteUnknown(siteId, [...strangers.values()], receivedAt);
}
