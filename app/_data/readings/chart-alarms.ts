import 'server-only';
import { pool } from '../pool';

/** Alarms and states that are drawn at most. */
const MOST = 400;
const MS = (instant: string) => `(extract(epoch FROM ${instant}) * 1000)::float8`;

/** An alarm that was raised. */
export interface RaisedAlarm {
  id: string;
  atMs: number;
  name: string;
}

/** Alarms of a system that were raised over a span of time by what a sensor read, in order of time. */
export async function raisedBy(
  siteId: string,
  alarmIds: readonly string[],
  { from, to }: { from: Date; to: Date },
): Promise<RaisedAlarm[]> {
  const { rows } = await pool().query<RaisedAlarm>(
    `SELECT o.id, ${MS('o.raised_at')} AS "atMs", d.name FROM alarm_occurrence o
       JOIN alarm_definition d ON d.site_id = o.site_id AND d.id = o.alarm_id
      WHERE o.site_id = $1 AND o.alarm_id = ANY($2::uuid[]) AND o.raised_at >= $3 AND o.raised_at < $4
      ORDER BY o.raised_at LIMIT ${MOST}`,
    [siteId, [...alarmIds], from, to],
  );
  return rows;
}

/** Ids of the alarms of a system by their keys. */
export async function alarmIdsOf(siteId: string, systemId: string, keys: readonly string[]): Promise<string[]> {
  const { rows } = await pool().query<{ id: string }>(
    'SELECT id FROM alarm_definition WHERE site_id = $1 AND system_id = $2 AND key = ANY($3) AND retired_at IS NULL',
    [siteId, systemId, [...keys]],
  );
  return rows.map(({ id }) => id);
}

/** A state that was in force. */
export interface StateRun {
  state: string;
  /** ms since 1970; null while it lasts. */
  fromMs: number;
  toMs: number | null;
}

/** States of a system that were in force within a span, in order of time. */
export async function statesWithin(
  siteId: string,
  systemId: string,
  { from, to }: { from: Date; to: Date },
): Promise<StateRun[]> {
  const { rows } = await pool().query<StateRun>(
    `SELECT b.state, ${MS('b.at')} AS "fromMs", ${MS('e.at')} AS "toMs" FROM state_event b
       LEFT JOIN LATERAL (SELECT min(at) AS at FROM state_event e
                           WHERE e.site_id = b.site_id AND e.run_id = b.run_id AND e.kind = 'ended') e ON true
      WHERE b.site_id = $1 AND b.system_id = $2 AND b.kind = 'begun' AND b.at < $4 AND (e.at IS NULL OR e.at > $3)
      ORDER BY b.at LIMIT ${MOST}`,
    [siteId, systemId, from, to],
  );
  return rows;
}
