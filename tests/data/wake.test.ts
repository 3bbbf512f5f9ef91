import { beforeEach, describe, expect, test } from 'vitest';
import { database } from '#data/client';
import { inTransaction } from '#data/transaction';
import { wake } from '#data/wake';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();

async function waiting(): Promise<unknown[]> {
  const { rows } = await query('SELECT task_identifier AS task, key, run_at FROM graphile_worker.jobs ORDER BY id');
  return rows;
}

beforeEach(async () => {
  await query('DELETE FROM graphile_worker._private_jobs');
});

describe('a task woken inside a transaction', () => {
  test('waits for a worker once the transaction is kept', async () => {
    await inTransaction((transaction) => wake(transaction, 'heartbeat', { from: 'a test' }));
    expect(await waiting()).toMatchObject([{ task: 'heartbeat', key: null }]);
    const { rows } = await query('SELECT payload FROM graphile_worker._private_jobs');
    expect(rows).toEqual([{ payload: { from: 'a test' } }]);
  });

  test('is forgotten when the transaction is not kept', async () => {
    const broken = inTransaction(async (transaction) => {
      await wake(transaction, 'heartbeat', {});
      throw new Error('no');
    });
    await expect(broken).rejects.toThrow('no');
    expect(await waiting()).toEqual([]);
  });

  test('waits once however often it is woken under one key, until the latest instant asked for', async () => {
    const runAt = new Date('2040-01-01T00:00:00Z');
    await wake(database(), 'heartbeat', {}, { key: 'once' });
    await wake(database(), 'heartbeat', {}, { key: 'once', runAt });
    expect(await waiting()).toEqual([{ task: 'heartbeat', key: 'once', run_at: runAt }]);
  });
});
