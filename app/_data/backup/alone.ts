import 'server-only';
import { pool } from '../pool';

/** Number of the lock, drawn once: nobody else who uses the same database may use it. */
const LOCK = 4_826_310_557;

/**
 * Does something that must not be done twice at once, however many workers there are. Should this process be killed, the
 * next one may begin as soon as PostgreSQL has noticed.
 *
 * @param work   what to do
 * @returns      false when somebody else is at it, and nothing was done
 */
export async function alone(work: () => Promise<void>): Promise<boolean> {
  const client = await pool().connect();
  let isOurs = false;
  try {
    const { rows } = await client.query<{ isOurs: boolean }>('SELECT pg_try_advisory_lock($1) AS "isOurs"', [LOCK]);
    isOurs = rows[0]?.isOurs === true;
    if (isOurs) await work();
    return isOurs;
  } finally {
    // The lock ends with its connection.
    client.release(isOurs);
  }
}
