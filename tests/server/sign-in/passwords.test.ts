import * as argon2 from '@node-rs/argon2';
import { inTransaction } from '#data/transaction';
import { setPassword } from '#data/accounts/accounts';
import { countTry, forgetFailures } from '#data/accounts/tries';
import { now } from '#server/clock';
import { visitOf } from '#server/gate/visit';
import { hashPassword, isOutdated, isPassword } from '#server/sign-in/password';
import { passwordFault } from '#server/sign-in/password-rules';
import { signIn } from '#server/sign-in/sign-in';
import { describe, expect, test, vi } from 'vitest';
import { freshDatabase } from '../../_support/database';
import { anAccount, headersWith } from '../../_support/signed-in';

// Each comparison runs as it is; what it was asked is kept.
vi.mock(import('@node-rs/argon2'), async (original) => {
  const whole = await original();
  return { ...whole, verify: vi.fn(whole.verify) };
});

const { query } = freshDatabase();

const GOOD = 'seven lanterns under the pier';
const attempt = (email: string, password: string) =>
  signIn(visitOf(headersWith('')) ?? expect.fail('no visit'), { email, password });

describe('a password that is chosen', () => {
  test.each([
    ['a sentence', GOOD],
    [
      '64 characters and more',
      'n7'.concat('Tide pools hold more than one would think at first sight. '.repeat(3)).slice(0, 200),
    ],
    ['letters of any script, each counted as one', 'тринадцать рыбок 🐟🐟'],
    ['15 characters', 'kx9 vrmq 41 zpt'],
  ])('may be %s', (_what, password) => {
    expect(passwordFault(password, ['Wren Sedge', 'wren@holdfast.example'])).toBeNull();
  });

  test.each([
    ['shorter than 15 characters', 'kx9 vrmq 41 zp'],
    ['14 characters of more than one unit each', '🐟'.repeat(14)],
    ['longer than 200', `${GOOD} `.repeat(7)],
    ['one that is commonly used', 'iloveyouiloveyou'],
    ['one of a dictionary of leaked ones, as often as one likes', 'passwordpassword'],
    ['the same with a space between', 'password password'],
    ['a row of keys', 'qwertyuiopasdfgh'],
    ['a count', '1234567890123456'],
    ['one character over and over', 'aaaaaaaaaaaaaaaaaaaaaaaa'],
    ['made of the person’s name', 'the Sedge of the seven seas'],
    ['made of their address', 'marsh.wren@tide.example!'],
    ['made of the word Holdfast', 'a HoldFast in heavy weather'],
  ])('may not be %s', (_what, password) => {
    expect(passwordFault(password, ['Wren Sedge', 'marsh.wren@tide.example'])).toMatch(/^[A-Z].*\.$/);
  });
});

describe('what is kept of a password', () => {
  // OWASP Password Storage Cheat Sheet: argon2id with 19 MiB, two passes, one lane at least; the text form is PHC's.
  test('is argon2id with at least the parameters that OWASP names, and a salt of its own each time', async () => {
    const [one, two] = await Promise.all([hashPassword(GOOD), hashPassword(GOOD)]);
    const [, m, t, p] = /^\$argon2id\$v=19\$m=(\d+),t=(\d+),p=(\d+)\$/.exec(one)?.map(Number) ?? [];
    expect(m).toBeGreaterThanOrEqual(19 * 1024);
    expect(t).toBeGreaterThanOrEqual(2);
    expect(p).toBe(1);
    expect(one).not.toBe(two);
  });

  test('is right for it alone, however its characters were composed (Unicode NFKC)', async () => {
    const kept = await hashPassword('Caf\u00e9 under the \uFB01sh pier');
    expect(await isPassword(kept, 'Cafe\u0301 under the fish pier')).toBe(true);
    expect(await isPassword(kept, 'Cafe under the fish pier')).toBe(false);
    expect(await isPassword(null, GOOD)).toBe(false);
  });

  test('is made anew at the next sign-in when its parameters are not those of today', async () => {
    const weak = await argon2.hash(GOOD, { memoryCost: 8192, timeCost: 1, parallelism: 1 });
    expect(isOutdated(weak)).toBe(true);
    const id = await anAccount({ email: 'weak@tide.example', passwordHash: weak });
    expect(await attempt('weak@tide.example', GOOD)).toMatchObject({ ok: true });
    const kept = (await query('SELECT password_hash FROM account WHERE id = $1', [id])).rows[0].password_hash;
    expect(isOutdated(kept)).toBe(false);
    expect(await attempt('weak@tide.example', GOOD)).toMatchObject({ ok: true });
  });
});

describe('signing in', () => {
  test('takes the address in any spelling, and the wrong password, the unknown address, the ended account and the account without a password are answered alike', async () => {
    const passwordHash = await hashPassword(GOOD);
    await anAccount({ email: 'Tarn@tide.example', passwordHash });
    const ended = await anAccount({ email: 'gone@tide.example', passwordHash });
    await query('UPDATE account SET ended_at = now() WHERE id = $1', [ended]);
    await anAccount({ email: 'none@tide.example' });
    expect(await attempt(' tARN@tide.example', GOOD)).toMatchObject({ ok: true, value: { to: '/' } });
    const no = { ok: false, reason: { why: 'wrong-sign-in' } };
    expect(await attempt('tarn@tide.example', `${GOOD}s`)).toEqual(no);
    expect(await attempt('nobody@tide.example', GOOD)).toEqual(no);
    expect(await attempt('gone@tide.example', GOOD)).toEqual(no);
    expect(await attempt('none@tide.example', GOOD)).toEqual(no);
  });

  // Counted, not timed: one comparison each, with a hash of the same parameters, of what was typed.
  test('works through a password as hard where there is no account', async () => {
    await anAccount({ email: 'slow@tide.example', passwordHash: await hashPassword(GOOD) });
    const compared = vi.mocked(argon2.verify);
    const asked = async (email: string) => {
      compared.mockClear();
      await attempt(email, 'a wrong one, but long');
      return compared.mock.calls.map(([kept, typed]) => [String(kept).replace(/\$[^$]*\$[^$]*$/, ''), typed]);
    };
    const there = await asked('slow@tide.example');
    expect(there).toEqual([['$argon2id$v=19$m=19456,t=2,p=1', 'a wrong one, but long']]);
    expect(await asked('nobody-here@tide.example')).toEqual(there);
  });

  test('leaves no password, address typed or token in what is kept of it', async () => {
    await attempt('my secret typed as address', 'my secret typed as password');
    const { rows } = await query('SELECT * FROM account_event');
    const { rows: tries } = await query('SELECT * FROM rate_limit');
    expect(rows.map(({ kind }) => kind)).toContain('sign-in-failed');
    expect(JSON.stringify([rows, tries])).not.toMatch(/my secret|seven lanterns|tide\.example/);
  });

  test('slows down with each failure, for an account that is there and one that is not, until it is right or a new one', async () => {
    await anAccount({ email: 'slowed@tide.example', passwordHash: await hashPassword(GOOD) });
    for (const email of ['slowed@tide.example', 'fancied@tide.example']) {
      for (let tried = 0; tried < 6; tried++) expect(await countTry(email, `from ${email}`)).toBeNull();
      expect(await countTry(email, `from ${email}`)).toEqual({ waitS: 1 });
    }
    expect(await attempt('slowed@tide.example', GOOD)).toEqual({ ok: false, reason: { why: 'too-often', waitS: 1 } });
    await query('DELETE FROM rate_limit WHERE key LIKE $1', ['pause:%']);
    for (let tried = 0; tried < 5; tried++) {
      await query('DELETE FROM rate_limit WHERE key LIKE $1', ['pause:%']);
      expect(await countTry('slowed@tide.example', 'elsewhere')).toBeNull();
    }
    expect(await countTry('slowed@tide.example', 'elsewhere')).toEqual({ waitS: 32 });
    await forgetFailures('slowed@tide.example');
    expect(await attempt('slowed@tide.example', GOOD)).toMatchObject({ ok: true });
    expect(await countTry('slowed@tide.example', 'elsewhere')).toBeNull();
  });

  // NIST SP 800-63B: no more than 100 consecutive failures.
  test('does not look at a password after a hundred failures in a row, and of many at once lets none slip by', async () => {
    const email = 'hammered@tide.example';
    await countTry(email, 'there');
    await query(
      "UPDATE rate_limit SET points = 98 WHERE points = 1 AND key LIKE 'failures:%' AND expire = (SELECT max(expire) FROM rate_limit WHERE key LIKE 'failures:%')",
    );
    const answers = await Promise.all(Array.from({ length: 10 }, () => countTry(email, 'there')));
    expect(answers.filter((answer) => answer === null).length).toBeLessThanOrEqual(1);
    await query("DELETE FROM rate_limit WHERE key LIKE 'pause:%'");
    await countTry(email, 'there');
    await query("DELETE FROM rate_limit WHERE key LIKE 'pause:%'");
    expect(await countTry(email, 'there')).toBe('never');
    await forgetFailures(email);
    expect(await countTry(email, 'there')).toBeNull();
  });

  test('from one address fails sixty times an hour at most, whoever it is tried for', async () => {
    const answers: unknown[] = [];
    for (let tried = 0; tried < 61; tried++) answers.push(await countTry(`p${tried}@tide.example`, '192.0.2.7'));
    expect(answers.slice(0, 60).every((answer) => answer === null)).toBe(true);
    expect(answers[60]).toEqual({ waitS: expect.any(Number) });
  });
});

test('another password ends every session but the one it was chosen in', async () => {
  const id = await anAccount({ email: 'changed@tide.example', passwordHash: await hashPassword(GOOD) });
  for (let times = 0; times < 3; times++) await attempt('changed@tide.example', GOOD);
  const { rows } = await query('SELECT id FROM session WHERE account_id = $1 ORDER BY id', [id]);
  const change = { accountId: id, passwordHash: await hashPassword(`${GOOD}!`), by: id, except: rows[1].id };
  await inTransaction((tx) => setPassword(tx, change, now()));
  const { rows: live } = await query('SELECT id FROM session WHERE account_id = $1 AND ended_at IS NULL', [id]);
  expect(live).toEqual([rows[1]]);
});
