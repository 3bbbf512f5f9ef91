import 'server-only';
import { newId } from '../new-id';
import { pool } from '../pool';
import { arrayText, type Asking } from './asking';
import { originCode, qualityCode } from './codes';
import type { NewReading } from './store-readings';

/** The channel on which whoever judges alarms hears that something arrived; the site's id is what it hears. */
export const ARRIVAL_CHANNEL = 'holdfast_arrival';

const ADD = `
  INSERT INTO reading_arrival (site_id, id, received_at, sensor_ids, ats, "values", qualities, origins)
  SELECT $1::uuid, $2::uuid, $3::timestamptz, $4::uuid[],
         ARRAY(SELECT to_timestamp(u.at / 1000.0) FROM unnest($5::float8[]) WITH ORDINALITY AS u(at, n) ORDER BY u.n),
         $6::float8[], $7::int2[], $8::int2[]
  RETURNING CASE WHEN $10::bool THEN pg_notify($9, $1::text)::text END AS told`;

/**
 * Says that readings came for which alarms are to be judged, once the transaction is kept. Those of a file are of days long
 * past, and call nobody.
 *
 * @param kept   readings that were stored
 * @param pace   `soon` where the next look of whoever judges is early enough, within a second
 */
export async function announceArrival(
  asking: Asking,
  siteId: string,
  kept: readonly NewReading[],
  receivedAt: Date,
  pace: 'at once' | 'soon' = 'at once',
): Promise<void> {
  const live = kept.filter(({ origin, isOfPast }) => origin !== 'file' && isOfPast !== true);
  if (live.length === 0) return;
  await asking(ADD, [
    siteId,
    newId(),
    receivedAt.toISOString(),
    arrayText(live.map(({ sensorId }) => sensorId)),
    arrayText(live.map(({ at }) => at.getTime())),
    arrayText(live.map(({ value }) => value)),
    arrayText(live.map(({ quality }) => qualityCode(quality))),
    arrayText(live.map(({ origin }) => originCode(origin))),
    ARRIVAL_CHANNEL,
    pace === 'at once',
  ]);
}

const GONE = `
  INSERT INTO reading_arrival (site_id, id, received_at, sensor_ids, ats, "values", qualities, origins, gone_ids)
  SELECT $1, $2, $3, '{}', '{}', '{}', '{}', '{}', g.ids
    FROM (SELECT array_agg(s.id ORDER BY s.id) AS ids FROM sensor s
           WHERE s.site_id = $1 AND s.retired_at IS NULL
             AND (s.id = ANY($4::uuid[]) OR s.gateway_id = ANY($5::uuid[]))) g
   WHERE g.ids IS NOT NULL
  RETURNING pg_notify($6, $1::text)`;

/**
 * Says that nothing more comes from sensors, nor from any that hang on these gateways, so that their silence need not be waited
 * for.
 */
export async function announceGone(
  siteId: string,
  { sensors, gateways }: { sensors: readonly string[]; gateways: readonly string[] },
  at: Date,
): Promise<void> {
  await pool().query(GONE, [siteId, newId(), at, sensors, gateways, ARRIVAL_CHANNEL]);
}
