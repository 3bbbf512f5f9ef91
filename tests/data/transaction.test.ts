import { beforeEach, describe, expect, test } from 'vitest';
import { database } from '#data/client';
import { inTransaction, type Transaction } from '#data/transaction';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();
const EARLY = new Date('2026-03-01T06:00:00Z');

beforeEach(async () => {
  await database().workerSighting.deleteMany();
  await database().workerSighting.createMany({ data: ['a', 'b'].map((worker) => ({ worker, seenAt: EARLY })) });
});

/** Both sides arrive once before either goes on; at a later try nobody has to wait. */
function meeting(sides: number): () => Promise<void> {
  let open: () => void = () => undefined;
  const gate = new Promise<void>((resolve) => {
    open = resolve;
  });
  let arrived = 0;
  return async () => {
    arrived += 1;
    if (arrived >= sides) open();
    await gate;
  };
}

async function move(transaction: Transaction, worker: string, minutes: number): Promise<void> {
  const seenAt = new Date(EARLY.getTime() + minutes * 60_000);
  await transaction.workerSighting.update({ where: { worker }, data: { seenAt } });
}

describe('a transaction', () => {
  test('keeps nothing of its work when the work throws, and is not tried again', async () => {
    let tries = 0;
    const broken = inTransaction(async (transaction) => {
      tries += 1;
      await move(transaction, 'a', 5);
      throw new Error('changed my mind');
    });
    await expect(broken).rejects.toThrow('changed my mind');
    expect(tries).toBe(1);
    const { rows } = await query('SELECT count(*)::int AS moved FROM worker_sighting WHERE seen_at <> $1', [EARLY]);
    expect(rows).toEqual([{ moved: 0 }]);
  });

  test('that clashes with another over what both read is run again, and both are kept', async () => {
    let tries = 0;
    const bothHaveRead = meeting(2);
    const later = (worker: string) => async (transaction: Transaction) => {
      tries += 1;
      const seen = await transaction.workerSighting.aggregate({ _max: { seenAt: true } });
      await bothHaveRead();
      const minutes = ((seen._max.seenAt?.getTime() ?? 0) - EARLY.getTime()) / 60_000 + 1;
      await move(transaction, worker, minutes);
    };
    await Promise.all([inTransaction(later('a'), 'Serializable'), inTransaction(later('b'), 'Serializable')]);
    expect(tries).toBeGreaterThan(2);
    const seen = await database().workerSighting.findMany({ orderBy: { seenAt: 'asc' } });
    // One after the other: whichever came second saw what the first had done.
    expect(seen.map(({ seenAt }) => (seenAt.getTime() - EARLY.getTime()) / 60_000)).toEqual([1, 2]);
  });

  test('that locks another out and is locked out by it is run again, and both are kept', async () => {
    let tries = 0;
    const bothHoldOne = meeting(2);
    const both = (first: string, second: string, minutes: number) => async (transaction: Transaction) => {
      tries += 1;
      await move(transaction, first, minutes);
      await bothHoldOne();
      await move(transaction, second, minutes);
    };
    await Promise.all([inTransaction(both('a', 'b', 1)), inTransaction(both('b', 'a', 2))]);
    expect(tries).toBe(3);
    const seen = await database().workerSighting.findMany();
    expect(new Set(seen.map(({ seenAt }) => seenAt.getTime())).size).toBe(1);
  });

  test('that clashes in raw SQL is run again like any other', async () => {
    let tries = 0;
    const bothHaveRead = meeting(2);
    const bump = async (transaction: Transaction) => {
      tries += 1;
      await transaction.$queryRaw`SELECT seen_at FROM worker_sighting WHERE worker = 'a'`;
      await bothHaveRead();
      await transaction.$executeRaw`
        UPDATE worker_sighting SET seen_at = seen_at + interval '1 minute' WHERE worker = 'a'`;
    };
    await Promise.all([inTransaction(bump, 'Serializable'), inTransaction(bump, 'Serializable')]);
    expect(tries).toBeGreaterThan(2);
    const { seenAt } = await database().workerSighting.findUniqueOrThrow({ where: { worker: 'a' } });
    expect(seenAt.getTime() - EARLY.getTime()).toBe(120_000);
  });

  test('that never stops clashing is given up on with the clash itself', async () => {
    let tries = 0;
    const clashing = inTransaction(async (transaction) => {
      tries += 1;
      await transaction.$executeRaw`DO $$ BEGIN RAISE EXCEPTION 'again' USING ERRCODE = '40001'; END $$`;
    });
    await expect(clashing).rejects.toThrow();
    expect(tries).toBe(6);
  });
});
