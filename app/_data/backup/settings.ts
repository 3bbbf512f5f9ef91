import 'server-only';
import type { ClientBase } from 'pg';

/**
 * How values are written as text, on both sides alike, whatever the server or the account is set to; no limit of time; and
 * an error instead of fewer rows, should rows ever be hidden from somebody.
 */
const SETTINGS = `
  SET LOCAL datestyle = 'ISO, YMD'; SET LOCAL intervalstyle = 'postgres'; SET LOCAL timezone = 'UTC';
  SET LOCAL extra_float_digits = 1; SET LOCAL bytea_output = 'hex'; SET LOCAL client_encoding = 'UTF8';
  SET LOCAL statement_timeout = 0; SET LOCAL idle_in_transaction_session_timeout = 0; SET LOCAL row_security = off`;

/**
 * Begins a transaction in which tables are copied.
 *
 * @param client   a connection that is in none
 * @param kind     what stands after BEGIN
 */
export async function beginCopying(client: ClientBase, kind: string): Promise<void> {
  await client.query(`BEGIN ${kind}`);
  await client.query(SETTINGS);
}
