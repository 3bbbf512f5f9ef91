import { endAccount, findAccountByEmail } from '#data/accounts/accounts';
import { keepChallenge, takeChallenge } from '#data/accounts/challenges';
import { makeLink } from '#data/accounts/links';
import { inTransaction } from '#data/transaction';
import { mailLink } from '#server/accounts/mail-link';
import { now } from '#server/clock';
import { passOpenly } from '#server/gate/open';
import { type Visit, visitOf } from '#server/gate/visit';
import { whoAsks } from '#server/gate/who';
import { askReset, askResetShape } from '#server/sign-in/ask-reset';
import { choosePassword, findPersonLink, newPasswordShape } from '#server/sign-in/new-password';
import { setUp, setUpShape } from '#server/sign-in/set-up';
import { signIn } from '#server/sign-in/sign-in';
import { passkeySignInShape, signInByPasskey } from '#server/sign-in/sign-in-by-passkey';
import { simpleParser } from 'mailparser';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { makeSetUpLink } from '../../../prisma/prepare/set-up.mjs';
import { freshDatabase } from '../../_support/database';
import { type MailServer, startMailServer } from '../../_support/mail-server';
import { anAccount, headersOf, headersWith } from '../../_support/signed-in';

const { query } = freshDatabase();

const GOOD = 'seven lanterns under the pier';
const NO_LINK = { ok: false, reason: { why: 'not-found', what: 'link' } };
const MINUTE_MS = 60_000;
const visit = (): Visit => visitOf(headersWith('')) ?? expect.fail('no visit');
const linkFor = (accountId: string, purpose: 'join' | 'reset', at = now()) =>
  inTransaction((tx) => makeLink(tx, { purpose, accountId, madeBy: 'local' }, at));
const choose = (purpose: 'join' | 'reset', token: string, password = GOOD) =>
  passOpenly(newPasswordShape, choosePassword(purpose), visit(), { token, password });

let mail: MailServer;
beforeAll(async () => {
  mail = await startMailServer();
  process.env.HOLDFAST_MAIL_URL = mail.url;
  process.env.HOLDFAST_ADDRESS = 'https://holdfast.example';
});
afterAll(() => mail.close());

describe('the link that sets Holdfast up', () => {
  const person = { name: 'Wren Tarrant', email: 'Wren@tide.example', password: GOOD };
  const first = (token: string) => passOpenly(setUpShape, setUp, visit(), { ...person, token });
  const url = () => process.env.DATABASE_URL ?? '';

  test('is made while nobody has an account but people of the demonstration, and a newer one takes its place', async () => {
    await anAccount({ isDemo: true });
    const [older, newer] = [await makeSetUpLink(url()), await makeSetUpLink(url())];
    expect(await first(older ?? '')).toEqual(NO_LINK);
    expect(
      await passOpenly(setUpShape, setUp, visit(), { ...person, token: newer, password: 'too short' }),
    ).toMatchObject({
      reason: { why: 'invalid', faults: [{ path: 'password' }] },
    });
    // Of two who use it at once, one does.
    const both = await Promise.all([first(newer ?? ''), first(newer ?? '')]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    const account = await findAccountByEmail('wren@tide.example');
    expect(account).toMatchObject({ everywhere: 'admin', name: 'Wren Tarrant', isDemo: false });
    expect(await first(newer ?? '')).toEqual(NO_LINK);
    expect(await makeSetUpLink(url())).toBeUndefined();
  });
});

describe('a link to join, or to a new password', () => {
  test('says whom it is for, gives the password, signs in, and works once', async () => {
    const id = await anAccount({ email: 'rill@tide.example', name: 'Rill' });
    const token = await linkFor(id, 'join');
    expect(await findPersonLink('join')(visit(), { token })).toEqual({
      ok: true,
      value: { name: 'Rill', email: 'rill@tide.example' },
    });
    expect(await findPersonLink('reset')(visit(), { token })).toEqual(NO_LINK);
    const entered = await choose('join', token);
    const cookie = entered.ok ? (entered.value.cookies[0]?.value ?? '') : '';
    expect(await whoAsks(headersWith(cookie))).toMatchObject({ id });
    expect(await choose('join', token)).toEqual(NO_LINK);
    expect(await signIn(visit(), { email: 'rill@tide.example', password: GOOD })).toMatchObject({ ok: true });
    expect(JSON.stringify((await query('SELECT * FROM one_time_link')).rows)).not.toContain(token);
  });

  test('leads nowhere for another purpose, after its time, when a newer one was made, and once the account has ended', async () => {
    const id = await anAccount();
    expect(await choose('join', await linkFor(id, 'reset'))).toEqual(NO_LINK);
    expect(await choose('reset', await linkFor(id, 'reset', new Date(now().getTime() - 61 * MINUTE_MS)))).toEqual(
      NO_LINK,
    );
    expect(
      await choose('join', await linkFor(id, 'join', new Date(now().getTime() - 7 * 24 * 60 * MINUTE_MS - MINUTE_MS))),
    ).toEqual(NO_LINK);
    const [older, newer] = [await linkFor(id, 'reset'), await linkFor(id, 'reset')];
    expect(await choose('reset', older)).toEqual(NO_LINK);
    await query('UPDATE account SET ended_at = now() WHERE id = $1', [id]);
    expect(await choose('reset', newer)).toEqual(NO_LINK);
  });

  test('to a new password ends every session there was', async () => {
    const id = await anAccount();
    const before = await headersOf(id);
    await choose('reset', await linkFor(id, 'reset'));
    expect(await whoAsks(before)).toBeNull();
  });
});

describe('a link that was made before a password was chosen by another', () => {
  test('leads nowhere any more: whoever was shown it has no way back in', async () => {
    const id = await anAccount();
    const shown = await linkFor(id, 'join');
    expect(await choose('reset', await linkFor(id, 'reset'))).toMatchObject({ ok: true });
    expect(await choose('join', shown)).toEqual(NO_LINK);
  });
});

describe('a link asked for by mail', () => {
  const jobs = async () =>
    (await query(`SELECT payload FROM graphile_worker._private_jobs ORDER BY id`)).rows.map(({ payload }) => payload);
  const askFor = (email: string) => passOpenly(askResetShape, askReset, visit(), { email });

  test('is answered alike whether the address has an account or not, and no token waits among the jobs', async () => {
    const id = await anAccount({ email: 'tarn@tide.example' });
    expect(await askFor('TARN@tide.example')).toEqual(await askFor('nobody@tide.example'));
    expect(await jobs()).toEqual([
      { account: id, madeBy: 'mail' },
      { account: null, madeBy: 'mail' },
    ]);
    for (let more = 0; more < 5; more++) expect(await askFor('tarn@tide.example')).toEqual({ ok: true, value: true });
    // Three an hour at most are on their way to one address.
    expect(await jobs()).toHaveLength(4);
  });

  test('is made by the worker and reaches its person through a real mail server', async () => {
    const id = await anAccount({ email: 'moor@tide.example' });
    await mailLink({ account: null, madeBy: 'mail' });
    await mailLink({ account: id, madeBy: 'mail' });
    expect(mail.taken.map(({ to }) => to)).toEqual([['moor@tide.example']]);
    const { text = '' } = await simpleParser(mail.taken[0]?.raw ?? '');
    const token = /https:\/\/holdfast\.example\/reset\/([\w-]{43})\s/.exec(text)?.[1] ?? '';
    expect(await choose('reset', token)).toMatchObject({ ok: true });
  });
});

describe('a link that somebody else has mailed', () => {
  const letterTo = async (account: string) => {
    const { length } = mail.taken;
    await mailLink({ account, madeBy: 'local' });
    return (await simpleParser(mail.taken[length]?.raw ?? '')).text ?? '';
  };

  test('lets in whoever has nothing to sign in by, and is to a new password for everybody else', async () => {
    const id = await anAccount();
    const token = /holdfast\.example\/join\/([\w-]{43})\s/.exec(await letterTo(id))?.[1] ?? '';
    expect(await choose('join', token)).toMatchObject({ ok: true });
    expect(await letterTo(id)).toMatch(/holdfast\.example\/reset\/[\w-]{43}\s/);
  });

  test('reaches nobody whose account has ended', async () => {
    const id = await anAccount();
    await inTransaction((tx) => endAccount(tx, id, 'local', now()));
    expect(await letterTo(id)).toBe('');
  });
});

describe('a challenge for a passkey', () => {
  test('is good once, for whom it was made, and for five minutes', async () => {
    const id = await anAccount();
    const at = now();
    await keepChallenge('one', id, at);
    await keepChallenge('two', null, at);
    expect(await takeChallenge('one', null, at)).toBe(false);
    expect(await takeChallenge('two', id, at)).toBe(false);
    expect(await takeChallenge('one', id, at)).toBe(true);
    expect(await takeChallenge('one', id, at)).toBe(false);
    expect(await takeChallenge('two', null, new Date(at.getTime() + 5 * MINUTE_MS))).toBe(false);
  });

  test('that is answered by nonsense lets nobody in, and the answer is not looked at when it is none', async () => {
    const answer = {
      id: 'AAAA',
      rawId: 'AAAA',
      type: 'public-key',
      clientExtensionResults: {},
      response: { clientDataJSON: 'AAAA', authenticatorData: 'AAAA', signature: 'AAAA' },
    };
    const by = (text: string) => passOpenly(passkeySignInShape, signInByPasskey, visit(), { answer: text });
    expect(await by(JSON.stringify(answer))).toEqual({ ok: false, reason: { why: 'wrong-sign-in' } });
    expect(await by('{')).toMatchObject({ reason: { why: 'invalid' } });
    expect(await by(JSON.stringify({ ...answer, type: 'x' }))).toMatchObject({ reason: { why: 'invalid' } });
  });
});
