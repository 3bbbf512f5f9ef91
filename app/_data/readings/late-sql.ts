import 'server-only';
import { LATE_MS } from '#core/readings/late';

/**
 * Whether a row of readings came late, as SQL: by a device, as it came first, and of a sensor. A correction is sent when somebody
 * sees it, and what follows by a law is worked out anew at any time.
 *
 * @param reading   alias of the row, with a dot, or nothing
 * @param isRead    SQL: whether its series is of a sensor
 */
export function lateSql(reading: string, isRead: string): string {
  const took = `${reading}received_at - ${reading}"at"`;
  return `(${isRead} AND ${reading}origin = 1 AND ${reading}revision = 0 AND ${took} > interval '${LATE_MS} milliseconds')`;
}

/** Whether a series is of a sensor, as SQL. @param id   SQL of its id; the site's is the first parameter */
export function isReadSql(id: string): string {
  return `EXISTS (SELECT FROM sensor s WHERE s.site_id = $1::uuid AND s.id = ${id}::uuid)`;
}
