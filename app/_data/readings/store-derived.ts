import 'server-only';
import { announceArrival } from './arrivals';
import { arrayText, type Asking } from './asking';
import { qualityCode } from './codes';
import { insertNew, insertRevisions, type Revised } from './rows';
import type { NewReading } from './store-readings';

/** Age, ms, from which a value calls nobody: it is worked out for the record. */
const FOR_THE_RECORD_MS = 86_400_000;

// As of a sensor: the newest, and the newest that is good. Where one was superseded, both are looked up.
const NEWEST = `SELECT "at", value, quality, reason, received_at FROM (
    SELECT DISTINCT ON ("at") * FROM reading WHERE site_id = $1::uuid AND sensor_id = s.id AND "at" >= s.since
     ORDER BY "at" DESC, revision DESC) r`;
const KEEP_LATEST = `
  UPDATE derived_series d SET "at" = n."at", value = n.value, quality = n.quality, reason = n.reason,
         received_at = n.received_at, good_at = coalesce(g."at", d.good_at), good_value = coalesce(g.value, d.good_value)
    FROM (SELECT u.id, least(to_timestamp(u.since / 1000.0), o.good_at, o."at") AS since
            FROM unnest($2::uuid[], $3::float8[]) AS u(id, since)
            JOIN derived_series o ON o.site_id = $1::uuid AND o.id = u.id) s
   CROSS JOIN LATERAL (${NEWEST} ORDER BY "at" DESC LIMIT 1) n
    LEFT JOIN LATERAL (${NEWEST} WHERE quality = 0 ORDER BY "at" DESC LIMIT 1) g ON true
   WHERE d.site_id = $1::uuid AND d.id = s.id`;

/**
 * Stores values of derived series, which supersede what stands there, and says to whoever judges alarms that they came.
 *
 * @param values   each with the revision it is: 0 where nothing stands yet
 * @param at       the present
 */
export async function storeDerived(
  asking: Asking,
  siteId: string,
  values: readonly Revised[],
  at: Date,
): Promise<void> {
  if (values.length === 0) return;
  const storing = { receivedAt: at };
  const fresh = values.filter(({ revision }) => revision === 0);
  if (fresh.length > 0) await insertNew(asking, siteId, fresh, storing);
  const revised = values.filter(({ revision }) => revision > 0);
  if (revised.length > 0) await insertRevisions(asking, siteId, revised, storing);
  const since = new Map<string, number>();
  for (const { sensorId, at: instant } of values)
    since.set(sensorId, Math.min(since.get(sensorId) ?? Infinity, instant.getTime()));
  await asking(KEEP_LATEST, [siteId, arrayText([...since.keys()]), arrayText([...since.values()])]);
  const live = values.filter((one) => at.getTime() - one.at.getTime() < FOR_THE_RECORD_MS);
  // They come seconds after their inputs: a turn of their own for each would cost as much as that of the readings.
  await announceArrival(asking, siteId, live, at, 'soon');
}

/** Whether a value differs from what stands. */
export function isOther(
  standing: { value: number; quality: NewReading['quality'] },
  { value, quality }: Pick<NewReading, 'value' | 'quality'>,
): boolean {
  return standing.value !== value || qualityCode(standing.quality) !== qualityCode(quality);
}
