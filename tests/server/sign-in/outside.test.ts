import { endAccount } from '#data/accounts/accounts';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { visitOf } from '#server/gate/visit';
import { whoAsks } from '#server/gate/who';
import { fromOutside, toOutside } from '#server/sign-in/outside';
import { cookiesOf } from '#server/sign-in/set-cookie';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { type Known, type TestIssuer, testIssuer, throughIssuer } from '../../_support/oidc-issuer';
import { anAccount, headersWith } from '../../_support/signed-in';

const { query } = freshDatabase();

const HERE = 'http://localhost:3200';
const visit = () => visitOf(headersWith('')) ?? expect.fail('no visit');
let issuer: TestIssuer;

beforeAll(async () => {
  issuer = await testIssuer(`${HERE}/api/auth/callback/outside`);
  process.env.HOLDFAST_OIDC_ISSUER = issuer.address;
  process.env.HOLDFAST_OIDC_CLIENT_ID = issuer.clientId;
  process.env.HOLDFAST_OIDC_CLIENT_SECRET = issuer.clientSecret;
});
afterAll(() => issuer.close());

/** Where a browser is sent, and what it keeps meanwhile. */
async function leave(to?: string): Promise<{ location: string; cookie: string }> {
  const sent = await toOutside(visit(), { to });
  if (!sent.ok) throw new Error('not sent');
  const { cookies, location } = sent.value;
  return { location, cookie: cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; ') };
}

/** A browser comes back. */
async function comeBack(at: URL, cookie: string): Promise<{ to: string | null; who: string | null }> {
  const response = await fromOutside(new Request(at, { headers: { host: 'localhost:3200', cookie } }));
  const session = cookiesOf(response.headers).find(({ name }) => name === 'holdfast-session');
  const who = session ? await whoAsks(headersWith(session.value)) : null;
  return { to: response.headers.get('location'), who: who?.id ?? null };
}

async function signIn(person: Known, to?: string) {
  issuer.person = person;
  const { location, cookie } = await leave(to);
  return await comeBack(await throughIssuer(issuer, location), cookie);
}

const NOT = { to: '/sign-in?problem=outside', who: null };

// Against `oidc-provider`, an implementation certified by the OpenID Foundation, over HTTP.
describe('signing in by an outside issuer', () => {
  test('is by code, with PKCE, state and nonce', async () => {
    const { location } = await leave();
    const { searchParams } = new URL(location);
    expect(Object.fromEntries(searchParams)).toMatchObject({
      response_type: 'code',
      code_challenge_method: 'S256',
      redirect_uri: `${HERE}/api/auth/callback/outside`,
      code_challenge: expect.stringMatching(/^[\w-]{43}$/),
      state: expect.stringMatching(/.{20}/),
      nonce: expect.stringMatching(/.{20}/),
    });
  });

  test('leads to the account with the address that the issuer vouches for, and from then on whatever the address', async () => {
    const id = await anAccount({ email: 'tarn@tide.example' });
    const person = { sub: 'tarn-1', email: 'Tarn@tide.example', email_verified: true };
    expect(await signIn(person, '/import')).toEqual({ to: '/import', who: id });
    expect(await signIn({ sub: 'tarn-1', email: 'other@tide.example', email_verified: false })).toEqual({
      to: '/',
      who: id,
    });
    const { rows } = await query('SELECT kind, detail FROM account_event WHERE account_id = $1 ORDER BY id', [id]);
    expect(rows.map(({ kind }) => kind)).toEqual(['account-made', 'outside-identity-linked', 'signed-in', 'signed-in']);
    expect(rows[2].detail).toMatchObject({ way: 'outside' });
  });

  test('leads nowhere without an account, and makes none', async () => {
    const before = await query('SELECT count(*) FROM account');
    expect(await signIn({ sub: 'new-1', email: 'new@tide.example', email_verified: true })).toEqual(NOT);
    expect((await query('SELECT count(*) FROM account')).rows).toEqual(before.rows);
  });

  test('leads nowhere by an address that nobody vouches for', async () => {
    await anAccount({ email: 'claimed@tide.example' });
    expect(await signIn({ sub: 'thief-1', email: 'claimed@tide.example', email_verified: false })).toEqual(NOT);
    expect(await signIn({ sub: 'thief-2', email: 'claimed@tide.example' })).toEqual(NOT);
  });

  test('leads nowhere for somebody else who was given the address of one who came before', async () => {
    await anAccount({ email: 'desk@tide.example' });
    expect(await signIn({ sub: 'desk-1', email: 'desk@tide.example', email_verified: true })).toMatchObject({
      to: '/',
    });
    expect(await signIn({ sub: 'desk-2', email: 'desk@tide.example', email_verified: true })).toEqual(NOT);
  });

  test('leads nowhere once the account has ended', async () => {
    const id = await anAccount({ email: 'gone@tide.example' });
    const person = { sub: 'gone-1', email: 'gone@tide.example', email_verified: true };
    expect(await signIn(person)).toMatchObject({ who: id });
    await inTransaction((tx) => endAccount(tx, id, 'local', now()));
    expect(await signIn(person)).toEqual(NOT);
  });

  test('is not taken from a browser that was not sent, nor twice, nor with another state', async () => {
    await anAccount({ email: 'once@tide.example' });
    issuer.person = { sub: 'once-1', email: 'once@tide.example', email_verified: true };
    const { location, cookie } = await leave();
    const back = await throughIssuer(issuer, location);
    expect(await comeBack(back, '')).toEqual(NOT);
    const other = await leave();
    expect(await comeBack(back, other.cookie)).toEqual(NOT);
    expect(await comeBack(back, cookie)).toMatchObject({ to: '/' });
    expect(await comeBack(back, cookie)).toEqual(NOT);
  });

  test('leads on to a page of ours alone', async () => {
    await anAccount({ email: 'on@tide.example' });
    const person = { sub: 'on-1', email: 'on@tide.example', email_verified: true };
    for (const to of ['//evil.example', 'https://evil.example/', '/\\evil.example', '/\t/evil.example'])
      expect(await signIn(person, to)).toMatchObject({ to: '/' });
  });
});
