import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';
import { isDriverAdapterError } from '@prisma/driver-adapter-utils';
import { Prisma } from '../../prisma/generated/client';
import { database } from './client';

/** What a use case may do inside a transaction. */
export type Transaction = Prisma.TransactionClient;

/** Times the work is tried before the clash is given up on. */
const TRIES = 6;
/** ms before the second try; doubled before each further one. */
const FIRST_PAUSE_MS = 10;
/** The driver's word for 40001 and 40P01. */
const CLASH = 'TransactionWriteConflict';
/** ms the work may wait for a connection, and may take unless it is said. */
const MAX_WAIT_MS = 10_000;
const TIMEOUT_MS = 30_000;

/**
 * Runs the work in one transaction: all of it is kept or nothing. When PostgreSQL breaks it off because it clashed with
 * another one (serialisation failure 40001, deadlock 40P01), it is run again from the start, here and nowhere else.
 * So the work must do nothing but speak to the database: whatever else is to happen follows once it is done.
 *
 * @param work        what to do; given the transaction, called again after a clash
 * @param isolation   `ReadCommitted` when left out. `Serializable` for work that decides by what it read: two such
 *                    transactions behave as though one ran after the other
 * @param timeout     ms the work may take
 * @returns           what the work returned
 * @throws            what the work threw, or the clash itself after six tries
 */
export async function inTransaction<T>(
  work: (transaction: Transaction) => Promise<T>,
  isolation: Prisma.TransactionIsolationLevel = 'ReadCommitted',
  timeout: number = TIMEOUT_MS,
): Promise<T> {
  for (let tried = 1; ; tried++) {
    try {
      return await database().$transaction(work, { timeout, maxWait: MAX_WAIT_MS, isolationLevel: isolation });
    } catch (error) {
      if (tried === TRIES || !isClash(error)) throw error;
      await wait(FIRST_PAUSE_MS * 2 ** (tried - 1));
    }
  }
}

/**
 * Prisma says P2034 when a statement of its own clashed, P2010 with the driver's words when raw SQL did, and hands on
 * the driver's error as it is when PostgreSQL found the clash at the end, on COMMIT.
 *
 * @param error   what a transaction threw
 * @returns       whether it only has to be run again
 */
function isClash(error: unknown): boolean {
  if (isDriverAdapterError(error)) return error.cause.kind === CLASH;
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return false;
  return error.code === 'P2034' || (error.code === 'P2010' && JSON.stringify(error.meta).includes(CLASH));
}
