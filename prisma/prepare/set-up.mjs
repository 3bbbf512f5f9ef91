// @ts-check
// The link by which the first account is made. There is no password to begin with: whoever starts Holdfast is given this
// link, once a start, as long as nobody has an account.
import { createHash, randomBytes } from 'node:crypto';
import pg from 'pg';
import { v7 } from 'uuid';
import { settingsFor } from '../engine/connection.mjs';

/** Those made before lead nowhere from now on. A person of the demonstration is nobody. */
const MAKE = `
  WITH nobody AS (SELECT 1 WHERE NOT EXISTS (SELECT 1 FROM account WHERE NOT is_demo)),
       former AS (UPDATE one_time_link SET expires_at = now()
                   WHERE purpose = 'set-up' AND used_at IS NULL AND expires_at > now()),
       made AS (INSERT INTO one_time_link (token_hash, purpose, made_by, created_at, expires_at)
                SELECT $1, 'set-up', 'local', now(), now() + interval '24 hours' FROM nobody RETURNING created_at)
  INSERT INTO account_event (id, at, kind, by, detail)
  SELECT $2, created_at, 'link-made', 'local', '{"purpose": "set-up"}' FROM made`;

/**
 * @param {string} url address of the database
 * @returns {Promise<string | undefined>} token of a fresh link, good for a day; none when somebody has an account
 */
export async function makeSetUpLink(url) {
  const client = new pg.Client(settingsFor(url).client);
  client.on('error', () => undefined);
  await client.connect();
  try {
    const token = randomBytes(32).toString('base64url');
    const hash = createHash('sha256').update(token, 'utf8').digest();
    const { rowCount } = await client.query(MAKE, [hash, v7()]);
    return rowCount ? token : undefined;
  } finally {
    await client.end().catch(() => undefined);
  }
}
