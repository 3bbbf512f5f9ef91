import { beforeAll, describe, expect, test } from 'vitest';
import { inLightTransaction } from '#data/light-transaction';
import type { Transaction } from '#data/transaction';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();

describe('a light transaction', () => {
  beforeAll(async () => {
    await query('CREATE TABLE light (id int PRIMARY KEY, said text, at timestamptz)');
    await query('GRANT ALL ON light TO PUBLIC');
  });

  const put = async (tx: Transaction, id: number, said: string) =>
    await tx.$executeRaw`INSERT INTO light (id, said) VALUES (${id}, ${said}) ON CONFLICT DO NOTHING`;
  const kept = async () => (await query('SELECT id, said FROM light ORDER BY id')).rows;

  test('keeps what was done in SQL alone, says how many rows, and reads instants as such', async () => {
    const at = new Date('2026-06-01T12:00:00Z');
    const done = await inLightTransaction(async (tx) => {
      const rows = [await put(tx, 1, 'one'), await put(tx, 1, 'again')];
      await tx.$executeRaw`UPDATE light SET at = ${at.toISOString()}::timestamptz WHERE id = ${1}`;
      const [found] = await tx.$queryRaw<{ at: Date; ids: number[] }[]>`
        SELECT at, ARRAY(SELECT id FROM light) AS ids FROM light WHERE id = ANY(${[1, 2]}::int[])`;
      return { rows, found };
    });
    expect(done).toEqual({ rows: [1, 0], found: { at, ids: [1] } });
    expect(await kept()).toEqual([{ id: 1, said: 'one' }]);
  });

  test('keeps nothing of what threw', async () => {
    const work = inLightTransaction(async (tx) => {
      await put(tx, 2, 'two');
      throw new Error('broken off');
    });
    await expect(work).rejects.toThrow('broken off');
    expect(await kept()).toEqual([{ id: 1, said: 'one' }]);
  });

  test('that comes to ask for a model does all of it once, through Prisma', async () => {
    let begun = 0;
    const sites = await inLightTransaction(async (tx) => {
      begun += 1;
      const isFirst = (await put(tx, 3, `begun ${begun}`)) === 1;
      return { isFirst, sites: await tx.site.count({ where: { key: 'nowhere' } }) };
    });
    expect(sites).toEqual({ isFirst: true, sites: 0 });
    expect(await kept()).toEqual([
      { id: 1, said: 'one' },
      { id: 3, said: 'begun 2' },
    ]);
  });
});
