import { endAccount } from '#data/accounts/accounts';
import { endSession, endSessionOf, endSessions, findLiveSession, listSessions } from '#data/accounts/sessions';
import { hashOf } from '#data/accounts/token';
import { listSites } from '#data/sites';
import { inTransaction } from '#data/transaction';
import { offerPasskey } from '#server/accounts/add-passkey';
import { now } from '#server/clock';
import { type Visit, visitOf } from '#server/gate/visit';
import { whoAsks } from '#server/gate/who';
import { enter } from '#server/sign-in/enter';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { countQueries } from '../../_support/count-queries';
import { freshDatabase } from '../../_support/database';
import { anAccount, headersOf, headersWith } from '../../_support/signed-in';
import { smallFacility } from '../../_support/small-facility';
import { keep } from '../../_support/stored';

const browser = vi.hoisted(() => ({ headers: new Headers() }));
vi.mock('next/headers', () => ({ headers: () => Promise.resolve(browser.headers) }));

const { query } = freshDatabase();

const HOUR_MS = 3_600_000;
const here = (headers: Headers): Visit => visitOf(headers) ?? expect.fail('no visit');
const tokenIn = (headers: Headers): string => here(headers).token ?? expect.fail('no token');

beforeAll(async () => {
  await keep(smallFacility());
});

describe('a session', () => {
  test('says who asks, with what they may do at which site, in one question', async () => {
    const id = await anAccount({ name: 'Rill Sedge', everywhere: 'viewer' });
    const headers = await headersOf(id);
    const [site] = await listSites();
    await query("INSERT INTO membership (site_id, account_id, role, since) VALUES ($1, $2, 'lead', now())", [
      site?.id,
      id,
    ]);
    const asked = await countQueries(() => whoAsks(headers));
    expect(asked).toHaveLength(1);
    expect(await whoAsks(headers)).toEqual({
      id,
      name: 'Rill Sedge',
      everywhere: 'viewer',
      at: { harbour: 'lead' },
      session: expect.any(String),
    });
    await query('UPDATE membership SET ended_at = now() WHERE account_id = $1', [id]);
    expect(await whoAsks(headers)).toMatchObject({ at: {} });
  });

  test('is begun by next-auth with a token of 256 bits of which the database has the SHA-256 alone', async () => {
    const id = await anAccount();
    const entered = await enter(here(headersWith('')), { accountId: id, way: 'password', to: '/import?x=1' });
    expect(entered).toMatchObject({
      to: '/import?x=1',
      cookies: [{ name: 'holdfast-session', path: '/', httpOnly: true, secure: false, sameSite: 'lax' }],
    });
    const token = entered.cookies[0]?.value ?? '';
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(await whoAsks(headersWith(token))).toMatchObject({ id });
    const { rows } = await query('SELECT * FROM session WHERE account_id = $1', [id]);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({ way: 'password', token_hash: Buffer.from(hashOf(token)) });
    expect(JSON.stringify(rows)).not.toContain(token);
    expect(rows[0].expires_at - rows[0].created_at).toBe(12 * HOUR_MS);
    expect(entered.cookies[0]?.expires?.getTime()).toBeLessThanOrEqual(now().getTime() + 12 * HOUR_MS);
  });

  test('has a new token at each sign-in, and the one that the browser had before ends', async () => {
    const id = await anAccount();
    const planted = await headersOf(await anAccount());
    const entered = await enter(here(planted), { accountId: id, way: 'passkey' });
    expect(entered.cookies[0]?.value).not.toBe(tokenIn(planted));
    expect(await whoAsks(planted)).toBeNull();
  });

  test('carries a cookie for this host alone and never without encryption behind https', async () => {
    const visit = {
      ...here(headersWith('')),
      origin: { url: 'https://a.example', host: 'a.example', name: 'a.example', isSecure: true, isLoopback: false },
    };
    const { cookies } = await enter(visit, { accountId: await anAccount(), way: 'password' });
    expect(cookies).toMatchObject([
      { name: '__Host-holdfast-session', path: '/', httpOnly: true, secure: true, sameSite: 'lax' },
    ]);
  });

  test('ends with the sign-out, by its person, with all the others, and with the account, at the next request', async () => {
    const id = await anAccount();
    const browsers = await Promise.all([1, 2, 3, 4, 5].map(() => headersOf(id)));
    const [out, ended, others, kept, last] = browsers.map(tokenIn) as [string, string, string, string, string];
    const is = async (token: string) => (await whoAsks(headersWith(token))) !== null;
    await endSessionOf(out, now());
    expect(await is(out)).toBe(false);
    const session = await findLiveSession(ended, now());
    expect(await endSession(await anAccount(), session?.id ?? '', id, now())).toBe(false);
    expect(await endSession(id, session?.id ?? '', id, now())).toBe(true);
    expect(await is(ended)).toBe(false);
    const going = await findLiveSession(kept, now());
    expect(
      await inTransaction((tx) => endSessions(tx, { accountId: id, by: id, except: going?.id ?? null }, now())),
    ).toBe(2);
    expect([await is(others), await is(last), await is(kept)]).toEqual([false, false, true]);
    expect(await listSessions(id, now())).toHaveLength(1);
    expect(await inTransaction((tx) => endAccount(tx, id, 'local', now()))).toBe(true);
    expect(await is(kept)).toBe(false);
    const { rows } = await query('SELECT kind, by, detail FROM account_event WHERE account_id = $1 ORDER BY id', [id]);
    const kinds = rows.map(({ kind }) => kind).filter((kind) => kind !== 'signed-in' && kind !== 'account-made');
    expect(kinds).toEqual(['signed-out', 'session-ended', 'sessions-ended', 'account-ended', 'sessions-ended']);
    for (const token of [out, ended, others, kept, last]) expect(JSON.stringify(rows)).not.toContain(token);
  });

  test('ends after twelve hours, and an account that has ended begins none', async () => {
    const id = await anAccount();
    const token = tokenIn(await headersOf(id));
    const begun = now().getTime();
    expect(await findLiveSession(token, new Date(begun + 12 * HOUR_MS - 60_000))).not.toBeNull();
    expect(await findLiveSession(token, new Date(begun + 12 * HOUR_MS))).toBeNull();
    await inTransaction((tx) => endAccount(tx, id, 'local', now()));
    await expect(enter(here(headersWith('')), { accountId: id, way: 'password' })).rejects.toThrow();
  });

  test('is noted as seen at most once a minute', async () => {
    const id = await anAccount();
    const token = tokenIn(await headersOf(id));
    const begun = now();
    const seen = async () => (await query('SELECT seen_at FROM session WHERE account_id = $1', [id])).rows[0].seen_at;
    const first = await seen();
    await findLiveSession(token, new Date(begun.getTime() + 50_000));
    expect(await seen()).toEqual(first);
    const later = new Date(begun.getTime() + 61_000);
    await findLiveSession(token, later);
    expect(await seen()).toEqual(later);
  });
});

describe('a request', () => {
  test.each(['', 'short', `${'x'.repeat(42)}=`, 'x'.repeat(44), 'x'.repeat(43)])(
    'with "%s" for a token is nobody’s',
    async (token) => {
      expect(await whoAsks(headersWith(token))).toBeNull();
    },
  );

  test('with a good token is nobody’s when it was made by a name that is not ours', async () => {
    const headers = await headersOf(await anAccount());
    headers.set('host', 'evil.example');
    expect(await whoAsks(headers)).toBeNull();
  });
});

describe('a passkey', () => {
  test('is offered soon after the sign-in and no longer: a session that was found does not become one for ever', async () => {
    const id = await anAccount();
    const offeredAfter = async (ms: number) => {
      browser.headers = await headersOf(id, new Date(now().getTime() - ms));
      const who = await whoAsks(browser.headers);
      return who ? await offerPasskey(who) : expect.fail('nobody');
    };
    expect(await offeredAfter(14 * 60_000)).toMatchObject({ ok: true, value: { rp: { id: 'localhost' } } });
    expect(await offeredAfter(16 * 60_000)).toMatchObject({
      ok: false,
      reason: { why: 'conflict', now: expect.stringMatching(/sign out and in again/) },
    });
  });
});
