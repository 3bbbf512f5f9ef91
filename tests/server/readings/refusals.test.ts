import { afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { closePool } from '#data/pool';
import { readBody } from '#server/readings/read-body';
import { facility } from '../../_support/build-facility';
import { freshDatabase } from '../../_support/database';
import { aSource, post } from '../../_support/sources';
import { keep, stored } from '../../_support/stored';

const { query } = freshDatabase();
let siteId = '';
let token = '';

beforeAll(async () => {
  await keep(facility());
  ({ siteId } = await stored('harbour'));
  ({ token } = await aSource(siteId));
});
afterEach(() => {
  vi.unstubAllEnvs();
});

/** A body without end, and how much of it was taken. */
function endless(): { body: ReadableStream<Uint8Array>; taken: () => number } {
  let bytes = 0;
  const piece = new TextEncoder().encode('{"n":"a","v":1},'.repeat(4096));
  const body = new ReadableStream<Uint8Array>({
    pull: (to) => {
      bytes += piece.byteLength;
      to.enqueue(piece);
    },
  });
  return { body, taken: () => bytes };
}

interface Held {
  answer: Promise<Response>;
  /** When the body began to be read. */
  begun: Promise<void>;
  close: () => void;
}

/** Sends a body that is held open. */
function hold(by: string): Held {
  let close: () => void = () => undefined;
  let begin: () => void = () => undefined;
  const begun = new Promise<void>((resolve) => {
    begin = resolve;
  });
  let pulls = 0;
  const body = new ReadableStream<Uint8Array>({
    pull: (to) => {
      close = () => to.close();
      pulls += 1;
      // The first piece is asked for before anybody reads.
      if (pulls > 1) begin();
      else to.enqueue(new Uint8Array([0x20]));
    },
  });
  return { answer: post(by, body), begun, close: () => close() };
}

async function taken(held: readonly Held[]): Promise<void> {
  await Promise.all(held.map(({ begun }) => begun));
}

async function end(held: readonly Held[]): Promise<void> {
  for (const { close } of held) close();
  for (const { answer } of held) expect((await answer).status).toBe(400);
}

describe('a body', () => {
  test.each([
    ['application/senml+json', 200],
    ['application/json', 200],
    ['Application/JSON; charset=UTF-8', 200],
    ['application/json; charset=latin1', 415],
    ['application/senml+cbor', 415],
    ['text/plain', 415],
    ['', 415],
    ['toString', 415],
  ])('of the type "%s" is answered %s', async (type, status) => {
    expect((await post(token, [{ n: 'a', v: 1 }], { type })).status).toBe(status);
  });

  test('that is packed is not unpacked', async () => {
    expect((await post(token, '[]', { headers: { 'content-encoding': 'gzip' } })).status).toBe(415);
  });

  test('that cannot be understood is refused as a whole, saying where', async () => {
    const answer = await post(token, '[{"n":"a","v":1},{"bt":"soon"}]');
    expect(answer.status).toBe(400);
    expect(await answer.json()).toEqual({
      said: '[1].bt must be a number that is not endless.',
      field: '[1].bt',
    });
    expect((await post(token, '')).status).toBe(400);
    expect(await (await post(token, 'a,b\r\n1,2', { type: 'text/csv' })).json()).toMatchObject({ field: 'name' });
    expect((await post(token, 'name,time,value\r\n"a', { type: 'text/csv' })).status).toBe(400);
    expect((await post(token, `name,time,value\r\n${'a'.repeat(5000)}`, { type: 'text/csv' })).status).toBe(400);
  });

  test('that is no UTF-8 is refused', async () => {
    const body = new ReadableStream<Uint8Array>({
      start: (to) => {
        to.enqueue(new Uint8Array([0x5b, 0xff, 0x5d]));
        to.close();
      },
    });
    expect(await (await post(token, body)).json()).toEqual({ said: 'The body is not UTF-8.' });
  });

  test('without end is refused before more than it may hold was taken', async () => {
    const { body, taken } = endless();
    const answer = await post(token, body);
    expect(answer.status).toBe(413);
    expect(taken()).toBeLessThan(4_000_000 + 3 * 65_536);
  });

  test('of 10 MB, or of a million records, is refused by its length, unread', async () => {
    const { body, taken } = endless();
    const before = process.memoryUsage().arrayBuffers;
    const answer = await post(token, body, { headers: { 'content-length': '10000000' } });
    expect(answer.status).toBe(413);
    expect(taken()).toBeLessThan(3 * 65_536);
    const million = `[${'{"n":"a","v":1},'.repeat(1_000_000).slice(0, -1)}]`;
    expect((await post(token, million)).status).toBe(413);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(64_000_000);
  });

  test('with more than 20,000 records within its bytes is refused too', async () => {
    const csv = `name,time,value\r\n${'a,2026-05-01T08:00:00Z,1\r\n'.repeat(20_001)}`;
    expect((await post(token, csv, { type: 'text/csv' })).status).toBe(413);
  });

  test('that was sent without a token is not read', async () => {
    const { body, taken } = endless();
    expect((await post('', body)).status).toBe(401);
    expect(taken()).toBeLessThan(3 * 65_536);
  });

  test.each(['\\u0000', '\\ud800', '\\n'])(
    'with a unit of %s is told so, and never to come again with it',
    async (unit) => {
      const answer = await post(token, `[{"n":"nobody","v":1,"u":"${unit}"}]`);
      expect(await answer.json()).toMatchObject({ refused: 1, records: [{ field: 'u' }] });
      const base = await post(token, `[{"bu":"${unit}","n":"nobody","v":1}]`);
      expect(await base.json()).toMatchObject({ field: '[0].bu' });
    },
  );

  test('that does not come in time is let go, and what is held of it with it', async () => {
    let isLetGo = false;
    const body = new ReadableStream<Uint8Array<ArrayBuffer>>({
      cancel: () => {
        isLetGo = true;
      },
    });
    expect(await readBody({ headers: new Headers(), body }, 20)).toBe('too-slow');
    expect(isLetGo).toBe(true);
  });

  test('that breaks off is refused, and nothing of it is stored', async () => {
    const body = new ReadableStream<Uint8Array>({ pull: (to) => to.error(new Error('gone')) });
    expect((await post(token, body)).status).toBe(400);
    expect((await query('SELECT count(*)::int AS n FROM reading')).rows).toEqual([{ n: 0 }]);
  });
});

describe('an answer', () => {
  test('is kept to itself like any other, and given to nobody who calls us by another name', async () => {
    const answer = await post(token, [{ n: 'a', v: 1 }]);
    expect(answer.headers.get('cache-control')).toBe('no-store, no-transform');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'self'");
    expect((await post(token, [{ n: 'a', v: 1 }], { headers: { host: 'evil.example' } })).status).toBe(421);
  });

  test('comes from the handler alone: nothing of Next’s stands before it that would hold its body', async () => {
    const { config } = await import('../../../proxy');
    const [matcher = ''] = config.matcher;
    const isGuarded = (path: string) => new RegExp(`^${matcher}$`).test(path);
    expect(isGuarded('/api/readings')).toBe(false);
    for (const path of [
      '/',
      '/api/readings/',
      '/api/readings/x',
      '/api/health',
      '/api/readingss',
      '/sites/a/api/readings',
    ])
      expect(isGuarded(path)).toBe(true);
  });
});

describe('a source', () => {
  test('that sends too often is told when it may again', async () => {
    const busy = await aSource(siteId, 'Runaway');
    const answers = [];
    for (let i = 0; i < 1201; i++) answers.push((await post(busy.token, '', { type: 'text/plain' })).status);
    expect(answers.slice(0, 1200).every((status) => status === 415)).toBe(true);
    const last = await post(busy.token, [{ n: 'a', v: 1 }]);
    expect(last.status).toBe(429);
    expect(Number(last.headers.get('retry-after'))).toBeGreaterThan(0);
    expect((await post(token, [{ n: 'a', v: 1 }])).status).toBe(200);
  });

  test('is told to come again when there is no room, and nothing is stored', async () => {
    vi.stubEnv('HOLDFAST_DISK_STOP_MB', '1000000000');
    const answer = await post(token, [{ n: 'a', v: 1 }]);
    expect(answer.status).toBe(503);
    expect(answer.headers.get('retry-after')).toBe('60');
  });

  test('that sends two bodies at once has to end one first, and keeps no other out', async () => {
    const other = await aSource(siteId, 'By the other line');
    const held = [hold(token), hold(token)];
    await taken(held);
    expect((await post(token, [{ n: 'a', v: 1 }])).status).toBe(503);
    expect((await post(other.token, [{ n: 'a', v: 1 }])).status).toBe(200);
    await end(held);
    expect((await post(token, [{ n: 'a', v: 1 }])).status).toBe(200);
  });

  test('is told to come again when too many send at once', async () => {
    const sources = await Promise.all(Array.from({ length: 4 }, (_, i) => aSource(siteId, `Line ${i}`)));
    const held = sources.flatMap((source) => [hold(source.token), hold(source.token)]);
    await taken(held);
    expect((await post(token, [{ n: 'a', v: 1 }])).status).toBe(503);
    await end(held);
    expect((await post(token, [{ n: 'a', v: 1 }])).status).toBe(200);
  });

  test('is told to come again when the database does not answer', async () => {
    const said: string[] = [];
    vi.spyOn(console, 'error').mockImplementation((line: string) => said.push(line));
    await query('ALTER TABLE unknown_name RENAME TO name_gone');
    try {
      expect((await post(token, [{ n: 'a', v: 1 }])).status).toBe(503);
      expect(said.join()).toContain('readings could not be stored');
      expect(said.join()).not.toContain(token);
    } finally {
      await query('ALTER TABLE name_gone RENAME TO unknown_name');
      vi.restoreAllMocks();
      await closePool();
    }
  });
});
