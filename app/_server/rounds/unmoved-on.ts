import 'server-only';
import type { SensorQuantity } from '#core/facility/system';
import type { Check } from '#core/rounds/check';
import type { Entry, EntryValue } from '#core/rounds/entry';
import { type Noted, type Unmoved, unmovedOf } from '#core/rounds/unmoved';
import { readingsBeside } from '#data/readings/beside';
import { listBefore } from '#data/rounds/entries';
import type { KeptRound } from '#data/rounds/round-row';
import type { SiteEntry } from '#data/sites';

/** Entries of a line in the month before that are looked through, at most: three rounds a day. */
const MOST = 93;

/** A quantity on a line, and the sensor it is a reading of. */
interface Asked {
  check: Check;
  quantity: SensorQuantity | null;
  sensorId: string | null;
}

/**
 * What of a round stood still in a week of entries though it would be seen to move. Two questions more than the round itself.
 *
 * @param standing   what stands on the round, by the key of the line
 */
export async function unmovedOn(
  { id: siteId }: Pick<SiteEntry, 'id'>,
  { begunAt, sheet }: KeptRound,
  checks: readonly Check[],
  standing: ReadonlyMap<string, Entry>,
): Promise<Unmoved[]> {
  const asked = checks.flatMap((check) => askedOn(check, sheet.sensors)).filter(({ check }) => standing.has(check.key));
  if (asked.length === 0) return [];
  const lines = [...new Set(asked.map(({ check }) => check.key))];
  const before = await listBefore(siteId, begunAt, lines, MOST);
  const followed = asked.map((one) => ({ ...one, noted: notedOf(one, standing, before.get(one.check.key) ?? []) }));
  const beside = await readingsBeside(
    siteId,
    followed.flatMap(({ sensorId, noted }) => (sensorId === null ? [] : noted.map(({ atMs }) => ({ sensorId, atMs })))),
  );
  const nowMs = Math.max(...followed.flatMap(({ noted }) => noted.at(-1)?.atMs ?? []));
  return unmovedOf(
    followed.map(({ check, quantity, sensorId, noted }) => ({
      line: check.key,
      quantity,
      noted,
      beside: sensorId === null ? null : (beside.get(sensorId) ?? null),
    })),
    nowMs,
  );
}

function askedOn(check: Check, sensors: Readonly<Record<string, string>>): Asked[] {
  const idOf = (sensor: string | null) =>
    sensor === null ? null : (sensors[`${check.about.system}/${sensor}`] ?? null);
  if (check.kind === 'number') return [{ check, quantity: check.quantity, sensorId: idOf(check.about.key) }];
  if (check.kind === 'figure') return [{ check, quantity: null, sensorId: null }];
  if (check.kind !== 'water-test') return [];
  return check.asks.map(({ quantity, sensor }) => ({ check, quantity, sensorId: idOf(sensor) }));
}

/** What was noted of a quantity, in order of time. @param before the latest first */
function notedOf(
  { check, quantity }: Asked,
  standing: ReadonlyMap<string, Entry>,
  before: readonly { value: EntryValue; at: Date }[],
): Noted[] {
  const own = standing.get(check.key);
  const all = before.map(({ value, at }) => ({ value, atMs: at.getTime() })).reverse();
  if (own?.value) all.push({ value: own.value, atMs: own.atMs });
  return all.flatMap(({ value, atMs }) => {
    const number = numberOf(value, quantity);
    return number === null ? [] : [{ atMs, value: number }];
  });
}

function numberOf(value: EntryValue, quantity: SensorQuantity | null): number | null {
  if (value.kind === 'number' || value.kind === 'figure') return value.value;
  if (value.kind !== 'water-test') return null;
  return Object.entries(value.figures).find(([key]) => key === quantity)?.[1]?.value ?? null;
}
