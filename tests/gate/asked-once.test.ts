import { expect, test, vi } from 'vitest';
import { z } from 'zod';
import { ok } from '#core/result';
import { endSessions } from '#data/accounts/sessions';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { act } from '#server/gate/act';
import { ask } from '#server/gate/ask';
import { countQueries } from '../_support/count-queries';
import { freshDatabase } from '../_support/database';
import { anAccount, headersOf } from '../_support/signed-in';

const request = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock('next/headers', () => ({ headers: async () => request.headers }));

freshDatabase();
const read = ask(z.undefined(), async (who) => ok(who.name));

test('what a page and its frame ask in one request is asked by one who is looked up once', async () => {
  request.headers = await headersOf(await anAccount({ name: 'Rill Sedge' }));
  const asked = await countQueries(() => Promise.all([read(undefined), read(undefined), read(undefined)]));
  expect(asked).toHaveLength(1);
  expect(await read(undefined)).toEqual({ ok: true, value: 'Rill Sedge' });
});

test('the next request is looked up anew, and what was ended is ended', async () => {
  const account = await anAccount();
  const first = await headersOf(account);
  request.headers = first;
  expect(await read(undefined)).toMatchObject({ ok: true });
  await inTransaction((tx) => endSessions(tx, { accountId: account, by: account }, now()));
  request.headers = new Headers(first);
  expect(await read(undefined)).toEqual({ ok: false, reason: { why: 'not-signed-in' } });
});

test('a page that is drawn anew in the request that did something is of whoever that left signed in', async () => {
  const account = await anAccount();
  request.headers = await headersOf(account);
  expect(await read(undefined)).toMatchObject({ ok: true });
  const leave = act(z.object({}), async () => {
    await inTransaction((tx) => endSessions(tx, { accountId: account, by: account }, now()));
    return ok('left');
  });
  expect(await leave(null, new FormData())).toMatchObject({ ok: true });
  expect(await read(undefined)).toEqual({ ok: false, reason: { why: 'not-signed-in' } });
});
