import 'server-only';
import pg from 'pg';
import { connectionSettings } from './connection';

/** The web server may load this file once a bundle, so the pool is kept where all copies of it look. */
const kept: typeof globalThis & { holdfastPool?: pg.Pool } = globalThis;

/**
 * The one pool of database connections of this process, opened at the first question. Prisma draws from it too.
 *
 * @returns   the pool; its sessions are in UTC
 * @throws    when DATABASE_URL is not set
 */
export function pool(): pg.Pool {
  kept.holdfastPool ??= openPool();
  return kept.holdfastPool;
}

function openPool(): pg.Pool {
  const opened = new pg.Pool(connectionSettings(process.env.DATABASE_URL));
  // A connection that breaks (the server was restarted) fails the question under way, if any, is dropped by the pool and
  // replaced at the next question. Without listeners the event would end the process besides.
  const dropped = () => undefined;
  opened.on('error', dropped);
  opened.on('connect', (client) => client.on('error', dropped));
  return opened;
}

/**
 * Names the database of this process, for a command that `npm start` did not start.
 *
 * @param url   address of the database
 */
export function pointAt(url: string): void {
  process.env.DATABASE_URL = url;
}

/** Closes every connection; the next question opens new ones. For the end of a process and of a test. */
export async function closePool(): Promise<void> {
  const closing = kept.holdfastPool;
  delete kept.holdfastPool;
  await closing?.end();
}
