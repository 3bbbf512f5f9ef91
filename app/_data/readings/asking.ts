import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';
import type pg from 'pg';
import { pool } from '../pool';
import type { Transaction } from '../transaction';

/**
 * Asks the database inside a transaction. Arrays are given as text, by `arrayText`, which both ways of asking hand on as
 * it is.
 */
export type Asking = (sql: string, values: (string | number | boolean | null)[]) => Promise<Record<string, unknown>[]>;

/** What PostgreSQL says when only trying again is needed: serialisation failure, deadlock. */
const CLASHES = ['40001', '40P01'];
const TRIES = 6;
const FIRST_PAUSE_MS = 10;

/** Lets rows be written in a transaction of Prisma's. */
export function askingIn(transaction: Pick<Transaction, '$queryRawUnsafe'>): Asking {
  return async (sql, values) => await transaction.$queryRawUnsafe<Record<string, unknown>[]>(sql, ...values);
}

/**
 * Runs the work in a transaction of the driver itself, which costs a third of one through Prisma; again from the start
 * after a clash. The work must do nothing but speak to the database.
 *
 * @param work   what to do; given how to ask, and the connection itself
 * @returns      what the work returned
 * @throws       what the work threw, or the clash itself after six tries
 */
export async function inPlainTransaction<T>(work: (asking: Asking, client: pg.ClientBase) => Promise<T>): Promise<T> {
  for (let tried = 1; ; tried++) {
    const client = await pool().connect();
    try {
      return await once(client, work);
    } catch (error) {
      if (tried === TRIES || !CLASHES.includes(codeOf(error))) throw error;
    }
    await wait(FIRST_PAUSE_MS * 2 ** (tried - 1));
  }
}

async function once<T>(client: pg.PoolClient, work: (asking: Asking, client: pg.ClientBase) => Promise<T>): Promise<T> {
  let broken: Error | undefined;
  try {
    await client.query('BEGIN');
    const done = await work(async (sql, values) => (await client.query(sql, values)).rows, client);
    await client.query('COMMIT');
    return done;
  } catch (error) {
    await client.query('ROLLBACK').catch((failed: Error) => {
      broken = failed;
    });
    throw error;
  } finally {
    // A connection that cannot even be rolled back is thrown away.
    client.release(broken);
  }
}

/** SQLSTATE of what the driver threw; empty for anything else. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}

/** An array as PostgreSQL reads it from a text. @param values   null for none */
export function arrayText(values: readonly (string | number | null)[]): string {
  return `{${values.map((value) => (typeof value === 'string' ? quoted(value) : (value ?? 'NULL'))).join(',')}}`;
}

function quoted(text: string): string {
  return `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}
