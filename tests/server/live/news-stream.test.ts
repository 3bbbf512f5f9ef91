import { beforeAll, describe, expect, test } from 'vitest';
import { endSessions } from '#data/accounts/sessions';
import { news } from '#data/news';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { newsStream } from '#server/live/news-stream';
import { freshDatabase } from '../../_support/database';
import { anAccount, headersOf } from '../../_support/signed-in';
import { smallFacility } from '../../_support/small-facility';
import { keep, stored } from '../../_support/stored';

freshDatabase();
let siteId: string;
let siteKey: string;
beforeAll(async () => {
  siteKey = smallFacility().site.key;
  await keep(smallFacility());
  ({ siteId } = await stored(siteKey));
});

async function watching(pace?: { heartbeatMs: number; askAgainMs: number }) {
  const account = await anAccount({ everywhere: 'viewer' });
  const gone = new AbortController();
  const request = new Request('http://localhost:3200/', { headers: await headersOf(account), signal: gone.signal });
  const response = newsStream({ id: siteId, key: siteKey, by: account }, request, pace);
  const reader = response.body?.getReader();
  if (!reader) throw new Error('no stream');
  const text = new TextDecoder();
  let said = '';
  /** Reads until the words came, or the end. */
  const until = async (words: string): Promise<string> => {
    while (!said.includes(words)) {
      const { value, done } = await reader.read();
      if (done) return 'ended';
      said += text.decode(value);
    }
    const before = said;
    said = '';
    return before;
  };
  return { account, gone, response, until };
}

const EVERYTHING = 'event: news\ndata: alarms readings rounds incidents states sources\n\n';

describe('the stream of a site', () => {
  test('is one of server-sent events that nobody on the way may hold back', async () => {
    const { response, gone } = await watching();
    expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    expect(response.headers.get('cache-control')).toBe('no-store, no-transform');
    gone.abort();
  });

  test('begins with everything, tells what changes, and ends with the browser', async () => {
    const { until, gone } = await watching();
    expect(await until(EVERYTHING)).toContain('retry: 1000');
    // What is said before the process listens is covered by everything being told once it does.
    const saying = setInterval(() => void inTransaction((tx) => news(tx, siteId, 'alarms')), 100);
    expect(await until('data: alarms\n\n')).toContain('event: news\n');
    clearInterval(saying);
    gone.abort();
    expect(await until('never')).toBe('ended');
  });

  test('gathers a storm of changes into a few lines', async () => {
    const { until, gone } = await watching();
    await until(EVERYTHING);
    for (let i = 0; i < 50; i++) await inTransaction((tx) => news(tx, siteId, i === 49 ? 'states' : 'readings'));
    const said = await until(' states');
    expect(said.split('event: news').length).toBeLessThan(12);
    gone.abort();
  });

  test('gives signs of life, and ends when the session does', async () => {
    const { until, account } = await watching({ heartbeatMs: 20, askAgainMs: 40 });
    await until(': here\n\n');
    await inTransaction((tx) => endSessions(tx, { accountId: account, by: account }, now()));
    expect(await until('never')).toBe('ended');
  });

  test('is one of forty at most that somebody has open, and ending one makes room for another', async () => {
    const headers = await headersOf(await anAccount({ everywhere: 'viewer' }));
    const open = (by: string) => {
      const gone = new AbortController();
      const request = new Request('http://localhost:3200/', { headers, signal: gone.signal });
      return { gone, status: newsStream({ id: siteId, key: siteKey, by }, request).status };
    };
    const all = Array.from({ length: 41 }, () => open('busy'));
    expect(all.map(({ status }) => status)).toEqual([...Array.from({ length: 40 }, () => 200), 429]);
    expect(open('another').status).toBe(200);
    all[0]?.gone.abort();
    // Whoever was turned away had nothing that could end.
    all[40]?.gone.abort();
    expect([open('busy').status, open('busy').status]).toEqual([200, 429]);
    for (const { gone } of all) gone.abort();
  });
});
