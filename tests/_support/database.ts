import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { afterAll, beforeAll, inject } from 'vitest';
import { database } from '#data/client';
import { closePool } from '#data/pool';
import { asProcess, TEMPLATE } from './template-name.mjs';

/** A copy of the template, for one test file. */
export interface Copy {
  /** Its address as the owner of its tables. */
  url: string;
  /** Its address as the processes have it, with their rights and no more. */
  appUrl: string;
  /** Asks it something as its owner, on a connection of its own. */
  query: (sql: string, values?: unknown[]) => Promise<pg.QueryResult>;
  /** Drops it. */
  drop: () => Promise<void>;
}

/**
 * Gives the test file that calls it a database of its own, migrated and empty, and points `_data` at it. It is there
 * before the first test and gone after the last. `_data`, and every process a test starts, has the rights of the
 * processes and no more, so that a right nobody granted is missed here and not at somebody's site.
 *
 * @returns   asks the database something directly, as its owner, for what `_data` has no question
 */
export function freshDatabase(): { query: Copy['query'] } {
  let copy: Copy | undefined;
  beforeAll(async () => {
    copy = await copyTemplate();
    process.env.DATABASE_URL = copy.appUrl;
  });
  afterAll(async () => {
    await database().$disconnect();
    await closePool();
    await copy?.drop();
  });
  return {
    query: (sql, values) => {
      if (!copy) throw new Error('The database is there from the first test on, not before.');
      return copy.query(sql, values);
    },
  };
}

/**
 * @returns   a fresh copy of the migrated template
 */
export function copyTemplate(): Promise<Copy> {
  return newDatabase(TEMPLATE);
}

/**
 * @returns   a database with nothing in it
 */
export function emptyDatabase(): Promise<Copy> {
  return newDatabase('template0');
}

async function newDatabase(template: string): Promise<Copy> {
  const server = inject('databaseServer');
  const name = `holdfast_${randomUUID().replaceAll('-', '')}`;
  await ask(server, `CREATE DATABASE ${name} TEMPLATE ${template}`);
  const address = new URL(server);
  address.pathname = `/${name}`;
  return {
    url: address.href,
    appUrl: asProcess(address.href),
    query: (sql, values) => ask(address.href, sql, values),
    drop: async () => {
      await ask(server, `DROP DATABASE ${name} WITH (FORCE)`);
    },
  };
}

/**
 * @param url      address of a database
 * @param sql      what to ask it
 * @param values   what stands for $1, $2 and so on
 * @returns        its answer
 */
export async function ask(url: string, sql: string, values: unknown[] = []): Promise<pg.QueryResult> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await client.query(sql, values);
  } finally {
    await client.end();
  }
}
