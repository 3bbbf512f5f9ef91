import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, describe, expect, test } from 'vitest';
import { listen, type Listening } from '#data/listen';
import { news, NEWS_CHANNEL, readNews } from '#data/news';
import { inTransaction } from '#data/transaction';
import { newId } from '#data/new-id';
import { freshDatabase } from '../_support/database';

const { query } = freshDatabase();
let listening: Listening | undefined;
afterEach(async () => await listening?.stop());

/** Listens, and keeps what was heard; resolves once listening has begun. */
async function keepHeard(): Promise<{ heard: string[]; begun: () => number }> {
  const heard: string[] = [];
  let begun = 0;
  await new Promise<void>((resolve) => {
    listening = listen(NEWS_CHANNEL, {
      heard: (said) => heard.push(said),
      begun: () => {
        begun += 1;
        resolve();
      },
    });
  });
  return { heard, begun: () => begun };
}

async function until(holds: () => boolean, ms = 5000): Promise<void> {
  for (let left = ms; !holds(); left -= 10) {
    if (left <= 0) throw new Error('it never came');
    await wait(10);
  }
}

describe('news of a change', () => {
  test('are heard once when the change is kept, and not at all when it is not', async () => {
    const { heard } = await keepHeard();
    const siteId = newId();
    const broken = inTransaction(async (tx) => {
      await news(tx, siteId, 'rounds');
      throw new Error('changed my mind');
    });
    await expect(broken).rejects.toThrow('changed my mind');
    await inTransaction(async (tx) => {
      await news(tx, siteId, 'alarms');
      await news(tx, siteId, 'alarms');
    });
    await until(() => heard.length > 0);
    expect(heard.map(readNews)).toEqual([{ site: siteId, what: 'alarms' }]);
  });

  test('that are none of ours are nobody’s', () => {
    expect(readNews(`{"site":"${newId()}","what":"sources"}`)?.what).toBe('sources');
    expect(['', '{', '{"site":"x","what":"alarms"}', `{"site":"${newId()}","what":"weather"}`].map(readNews)).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });
});

describe('a listener whose connection is cut', () => {
  test('is back by itself, and is told that it may have missed something', async () => {
    const { heard, begun } = await keepHeard();
    await query(
      "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE query LIKE 'LISTEN %' AND datname = current_database()",
    );
    await until(() => begun() === 2);
    await inTransaction((tx) => news(tx, newId(), 'readings'));
    await until(() => heard.length === 1);
  });
});
