import { inspect } from 'node:util';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { setPassword } from '#data/accounts/accounts';
import { findLink, makeLink } from '#data/accounts/links';
import { inTransaction } from '#data/transaction';
import { now } from '#server/clock';
import { logError, logInfo } from '#server/log';
import { hashPassword } from '#server/sign-in/password';
import { setUp } from '#server/sign-in/set-up';
import { signIn } from '#server/sign-in/sign-in';
import { visitOf } from '#server/gate/visit';
import { whoAsks } from '#server/gate/who';
import { freshDatabase } from '../_support/database';
import { anAccount, headersOf, headersWith } from '../_support/signed-in';

const { query } = freshDatabase();

// Planted: whatever of these comes out is a secret that was told.
const PASSWORD = 'planted lanterns under the pier';
const WRONG = 'planted but wrong, under the quay';
const EMAIL = 'planted@holdfast.example';
let token = '';
let link = '';
let hash = '';

/** Everything that was printed, and everything that was thrown as Next would print it. */
async function printedBy(work: () => Promise<unknown>): Promise<string> {
  const printed: string[] = [];
  const note = (...words: unknown[]) => void printed.push(words.map((word) => inspect(word, { depth: 9 })).join(' '));
  const listened = [
    ...(['log', 'info', 'warn', 'error', 'debug'] as const).map((name) =>
      vi.spyOn(console, name).mockImplementation(note),
    ),
    ...[process.stdout, process.stderr].map((stream) =>
      vi.spyOn(stream, 'write').mockImplementation((text) => {
        note(text);
        return true;
      }),
    ),
  ];
  try {
    await work();
  } catch (error) {
    // Next prints what a page or an action throws: the error, its cause, and whatever else hangs on it.
    note(error);
  } finally {
    for (const spy of listened) spy.mockRestore();
  }
  return printed.join('\n');
}

const visit = () => visitOf(headersWith(token)) ?? expect.fail('no visit');
const secrets = () => [PASSWORD, WRONG, token, link, hash];
const attempt = (password: string) => signIn(visit(), { email: EMAIL, password });

beforeAll(async () => {
  const id = await anAccount({ email: EMAIL });
  hash = await hashPassword(PASSWORD);
  await inTransaction((tx) => setPassword(tx, { accountId: id, passwordHash: hash, by: id }, now()));
  token = /holdfast-session=(\S+)/.exec((await headersOf(id)).get('cookie') ?? '')?.[1] ?? '';
  link = await inTransaction((tx) => makeLink(tx, { purpose: 'reset', accountId: id, madeBy: 'local' }, now()));
  expect(secrets().every((secret) => secret.length > 20)).toBe(true);
});

describe('nothing secret is printed', () => {
  test('by signing in, with the right word and the wrong one', async () => {
    const printed = await printedBy(async () => {
      expect((await attempt(PASSWORD)).ok).toBe(true);
      expect((await attempt(WRONG)).ok).toBe(false);
      expect(await whoAsks(headersWith(token))).not.toBeNull();
    });
    for (const secret of secrets()) expect(printed).not.toContain(secret);
  });

  // Each table is taken away in turn, so that every statement on the way fails once with what it was given.
  test.each(['rate_limit', 'account', 'session', 'account_event', 'one_time_link', 'membership'])(
    'when the table %s is gone in the middle of it',
    async (table) => {
      await query(`ALTER TABLE ${table} RENAME TO gone_${table}`);
      let printed: string;
      try {
        printed = await printedBy(async () => await attempt(PASSWORD));
        printed += await printedBy(async () => await attempt(WRONG));
        printed += await printedBy(async () => await whoAsks(headersWith(token)));
        printed += await printedBy(async () => await findLink('reset', link, now()));
        printed += await printedBy(
          async () => await setUp(visit(), { token: link, name: 'Planted', email: EMAIL, password: PASSWORD }),
        );
      } finally {
        await query(`ALTER TABLE gone_${table} RENAME TO ${table}`);
      }
      expect(printed).toContain(table);
      for (const secret of secrets()) expect(printed).not.toContain(secret);
    },
  );

  test('and what is printed is seen by this test', async () => {
    const printed = await printedBy(async () => {
      logInfo('planted', { word: PASSWORD });
      logError('planted', new Error(token));
      throw new Error(WRONG);
    });
    for (const secret of [PASSWORD, token, WRONG]) expect(printed).toContain(secret);
  });
});
