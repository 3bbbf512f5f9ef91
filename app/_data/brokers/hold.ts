import 'server-only';
import { NEWS_CHANNEL } from '../news';
import { pool } from '../pool';

/** One broker of one site. */
export interface BrokerKey {
  siteId: string;
  sourceId: string;
}

// By the clock of the database: workers stand on machines whose clocks differ.
const TAKE = `
  INSERT INTO broker_state AS s (site_id, source_id, held_by, held_until)
  VALUES ($1, $2, $3, clock_timestamp() + make_interval(secs => $4))
  ON CONFLICT (site_id, source_id) DO UPDATE SET held_by = EXCLUDED.held_by, held_until = EXCLUDED.held_until,
         version = CASE WHEN s.held_by = EXCLUDED.held_by THEN s.version END,
         connected_at = CASE WHEN s.held_by = EXCLUDED.held_by THEN s.connected_at END
   WHERE s.held_by IS NULL OR s.held_by = EXCLUDED.held_by OR s.held_until < clock_timestamp()`;

/**
 * Takes or keeps the connection to a broker, which one worker at a time has.
 *
 * @param worker   id of the worker
 * @param forS     s for which it is the worker's unless it says so again
 * @returns        whether it is
 */
export async function holdBroker({ siteId, sourceId }: BrokerKey, worker: string, forS: number): Promise<boolean> {
  const { rowCount } = await pool().query(TAKE, [siteId, sourceId, worker, forS]);
  return (rowCount ?? 0) > 0;
}

// Whoever looks at the sources of the site sees it at once.
const TOLD = `SELECT pg_notify('${NEWS_CHANNEL}', json_build_object('site', $1::uuid, 'what', 'sources')::text) FROM changed`;

/** Lets go of the connection to a broker, so that another worker has it at once. */
export async function letBrokerGo({ siteId, sourceId }: BrokerKey, worker: string): Promise<void> {
  await pool().query(
    `WITH changed AS (
       UPDATE broker_state SET held_by = NULL, held_until = NULL, version = NULL, connected_at = NULL
        WHERE site_id = $1 AND source_id = $2 AND held_by = $3 RETURNING 1) ${TOLD}`,
    [siteId, sourceId, worker],
  );
}

/** Notes that a broker took the connection, and by which version of MQTT; what went wrong before is over. */
export async function noteConnected({ siteId, sourceId }: BrokerKey, version: number, at: Date): Promise<void> {
  await pool().query(
    `WITH changed AS (
       UPDATE broker_state SET version = $3, connected_at = $4, failed_at = NULL, failed_why = NULL
        WHERE site_id = $1 AND source_id = $2 RETURNING 1) ${TOLD}`,
    [siteId, sourceId, version, at],
  );
}

/** Notes why there is no connection, or what of it does not work. */
export async function noteFailed(
  { siteId, sourceId }: BrokerKey,
  why: string,
  at: Date,
  isConnected: boolean,
): Promise<void> {
  await pool().query(
    `WITH changed AS (
       UPDATE broker_state SET failed_at = $3, failed_why = $4, version = CASE WHEN $5 THEN version END,
              connected_at = CASE WHEN $5 THEN connected_at END
        WHERE site_id = $1 AND source_id = $2 RETURNING 1) ${TOLD}`,
    [siteId, sourceId, at, why, isConnected],
  );
}

/** What came of messages. */
export interface Tally {
  messages: number;
  stored: number;
  refused: number;
  retained: number;
}

/** Adds to what came of messages. */
export async function noteTally({ siteId, sourceId }: BrokerKey, tally: Tally, at: Date): Promise<void> {
  const { messages, stored, refused, retained } = tally;
  await pool().query(
    `UPDATE broker_state SET message_at = $3, messages = messages + $4, stored = stored + $5, refused = refused + $6,
            retained = retained + $7
      WHERE site_id = $1 AND source_id = $2`,
    [siteId, sourceId, at, messages, stored, refused, retained],
  );
}
