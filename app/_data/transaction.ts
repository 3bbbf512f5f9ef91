import 'server-only';
import { setTimeout as wait } from 'node:timers/promises';
import { Prisma } from '../../prisma/generated/client';
import { database } from './client';

/** What a use case may do inside a transaction. */
export type Transaction = Prisma.TransactionClient;

/** Times the work is tried before the clash is given up on. */
const TRIES = 6;
/** ms before the second try; doubled before each further one. */
const FIRST_PAUSE_MS = 10;
/** ms the work may take, and may wait for a connection. */
const LIMITS = { timeout: 30_000, maxWait: 10_000 };

/**
 * Runs the work in one transaction: all of it is kept or nothing. When PostgreSQL breaks it off because it clashed with
 * another one (serialisation failure 40001, deadlock 40P01), it is run again from the start, here and nowhere else.
 * So the work must do nothing but speak to the database: whatever else is to happen follows once it is done.
 *
 * @param work        what to do; given the transaction, called again after a clash
 * @param isolation   `ReadCommitted` when left out. `Serializable` for work that decides by what it read: two such
 *                    transactions behave as though one ran after the other
 * @returns           what the work returned
 * @throws            what the work threw, or the clash itself after six tries
 */
export async function inTransaction<T>(
  work: (transaction: Transaction) => Promise<T>,
  isolation: Prisma.TransactionIsolationLevel = 'ReadCommitted',
): Promise<T> {
  for (let tried = 1; ; tried++) {
    try {
      return await database().$transaction(work, { ...LIMITS, isolationLevel: isolation });
    } catch (error) {
      if (tried === TRIES || !isClash(error)) throw error;
      await wait(FIRST_PAUSE_MS * 2 ** (tried - 1));
    }
  }
}

/**
 * Prisma says P2034 for both codes, and P2010 with the driver's own words when the statement was raw SQL.
 *
 * @param error   what a transaction threw
 * @returns       whether it only has to be run again
 */
function isClash(error: unknown): boolean {
  if (!(error instanceof Prisma.PrismaClientKnownRequestError)) return false;
  if (error.code === 'P2034') return true;
  return error.code === 'P2010' && /40001|40P01|TransactionWriteConflict/.test(JSON.stringify(error.meta));
}
