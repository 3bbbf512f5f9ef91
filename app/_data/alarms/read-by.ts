import 'server-only';
import { pool } from '../pool';

/**
 * Who read the value that raised an alarm, where a person did on a round.
 *
 * @param sensorId   the sensor it is held to
 * @param at         when the reading was taken
 * @returns          their account; null when a device read it
 */
export async function readBy(siteId: string, sensorId: string, at: Date): Promise<string | null> {
  const { rows } = await pool().query<{ by: string }>(
    `SELECT e.by FROM reading r JOIN round_entry e ON e.site_id = r.site_id AND e.id = r.came_by
      WHERE r.site_id = $1 AND r.sensor_id = $2 AND r.at = $3 AND r.origin = 3 ORDER BY r.revision DESC LIMIT 1`,
    [siteId, sensorId, at],
  );
  return rows[0]?.by ?? null;
}
